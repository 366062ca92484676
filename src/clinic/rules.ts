import type { Said } from '../model/clinic.ts';
import type { Params } from '../model/quantity.ts';
import type { Thresholds } from '../schemas/thresholds.ts';

/** Each threshold in force, to be said in one sentence, in order of the tiers. */
export function rulesOf({ veryLow, lows, veryHigh, data }: Thresholds): Said[] {
  const rules: Said[] = [];
  const add = (rule: string, params: Params = {}): void => {
    rules.push({ key: `pages.worklist.rules.${rule}`, params });
  };
  const number = (rule: string, n: number | null): void => {
    if (n !== null) add(rule, { n: { q: 'count', value: n } });
  };
  const share = (rule: string, value: number | 'goals' | null): void => {
    if (value === 'goals') add(`${rule}Goals`);
    else if (value !== null) add(`${rule}Share`, { share: { q: 'share', value } });
  };
  add('unread');
  number('veryLowEvents', veryLow.events);
  share('veryLow', veryLow.share);
  share('low', lows.share);
  number('nightLows', lows.nightEvents);
  share('veryHigh', veryHigh.share);
  if (veryHigh.minutes !== null) add('veryHighLong', { minutes: { q: 'minutes', value: veryHigh.minutes } });
  add('worse');
  number('fewDays', data.days);
  if (data.share !== null) add('thinDays', { share: { q: 'share', value: data.share } });
  add('steady');
  return rules;
}
