import { NIGHT_END } from '../targets/consensus.ts';
import { also, leftOut } from './evidence/hint.ts';
import { stretchFrom } from './evidence/places.ts';
import { clock, count, limit, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/** Told without a hint from so many days on, when lows are at least twice as frequent as on rest days (ours). */
const FEW = 2;
const TIMES = 2;

/**
 * Days with exercise, from its start to 6 in the morning, beside days with notes but no exercise noted: where a hint says
 * that glucose went lower and one day was low, or where 2 days and a third were, twice as often as rest days.
 */
export const exerciseOrRest: Finding<'exercise-or-rest'> = {
  id: 'exercise-or-rest',
  source:
    'McMahon 2007, J Clin Endocrinol Metab 92:963-968; Davey 2013, J Clin Endocrinol Metab 98:2908-2914; how often: ours',
  look({ comparisons, exercise }) {
    if (!comparisons.ok) return untold(comparisons.why);
    const one = comparisons.value.find(({ id }) => id === 'exercise-or-rest');
    if (!one || one.a.lowsOf === 0 || one.b.lowsOf === 0) return untold('too-few-occasions');
    const share = one.a.lows / one.a.lowsOf;
    const restShare = one.b.lows / one.b.lowsOf;
    const hint = one.verdict === 'hint' && (one.difference?.value ?? 0) < 0;
    const often = one.a.lows >= FEW && share >= 1 / 3 && share >= TIMES * restShare;
    if (!(hint && one.a.lows > 0) && !often) return absent;
    const low = exercise.ok ? exercise.value.filter(({ untilMorning }) => untilMorning.low) : [];
    return holds(
      {
        limit: limit('low'),
        low: count(one.a.lows),
        days: count(one.a.lowsOf),
        restLow: count(one.b.lows),
        rest: count(one.b.lowsOf),
        from: clock(one.fromMinute ?? 0),
        six: clock(NIGHT_END),
        hint: word(hint ? 'hint' : 'count'),
        ...leftOut(one),
      },
      low.map((session) => stretchFrom(session, session.untilMorning.minutes)),
      hint ? 'hint' : 'count',
      also(one),
    );
  },
};
