import type { Said } from '../model/clinic.ts';
import type { Below, Filled } from '../model/words.ts';
import type { Thresholds } from '../schemas/thresholds.ts';
import { OURS, TEN } from './severity.ts';

type Rule = Below<'pages.worklist.rules'>;

/** How people of any group are put into one order, a sentence each. */
export function orderRules(): Said[] {
  const minutes = (value: number) => ({ minutes: { q: 'minutes', value } as const });
  const count = (value: number) => ({ q: 'count', value }) as const;
  const say = <R extends Below<'pages.worklist.severity'>>(
    rule: R,
    ...[params]: Filled<`pages.worklist.severity.${R}`>
  ): Said => ({ key: `pages.worklist.severity.${rule}`, params: params ?? {} });
  return [
    say('order'),
    say('veryLow', minutes(TEN.veryLow)),
    say('longestLow', minutes(TEN.longestLow)),
    say('nights', { nights: count(TEN.nights) }),
    say('unbrokenHigh', minutes(TEN.unbrokenHigh)),
    say('noInsulin', { points: count(OURS.noInsulin), most: count(OURS.mostHighs) }),
    say('worse', { lows: count(OURS.worseLows), points: count(OURS.worse) }),
    say('agreed', { points: count(OURS.agreed) }),
  ];
}

/** Each threshold in force, to be said in one sentence, in order of the tiers. */
export function rulesOf({ veryLow, lows, veryHigh, data }: Thresholds): Said[] {
  const rules: Said[] = [];
  const add = <R extends Rule>(rule: R, ...[params]: Filled<`pages.worklist.rules.${R}`>): void => {
    rules.push({ key: `pages.worklist.rules.${rule}`, params: params ?? {} });
  };
  const number = (rule: 'veryLowEvents' | 'nightLows' | 'fewDays', n: number | null): void => {
    if (n !== null) add(rule, { n: { q: 'count', value: n } });
  };
  const share = (rule: 'veryLow' | 'low' | 'veryHigh', value: number | 'goals' | null): void => {
    if (value === 'goals') add(`${rule}Goals`);
    else if (value !== null) add(`${rule}Share`, { share: { q: 'share', value } });
  };
  add('unread');
  number('veryLowEvents', veryLow.events);
  share('veryLow', veryLow.share);
  if (veryHigh.minutes !== null) add('veryHighLong', { minutes: { q: 'minutes', value: veryHigh.minutes } });
  share('low', lows.share);
  number('nightLows', lows.nightEvents);
  share('veryHigh', veryHigh.share);
  add('worse');
  number('fewDays', data.days);
  if (data.share !== null) add('thinDays', { share: { q: 'share', value: data.share } });
  add('steady');
  return rules;
}
