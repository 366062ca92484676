import { LONG } from '../measures/longHighs.ts';
import type { LongHighs } from '../model/highs.ts';
import { kindsOf } from '../occasions/insulin.ts';
import { daysOf, evidenceOf, extremes, whenOf } from './evidence/episodes.ts';
import { count, glucose, limit, minutes, share, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/** Hours beyond the level from which ketones are a question: on end, or in one day; in pregnancy from the first long high. */
const KETONES = { unbroken: 360, inDay: 720 };

/**
 * Highs with 2 hours or more above the very high limit, with dates and what was noted; in pregnancy above 200 mg/dL. Ketones
 * are a question where the hours make it one: 6 on end or 12 in a day, in pregnancy 2.
 */
export const longVeryHigh: Finding<'long-very-high'> = {
  id: 'long-very-high',
  source: 'ours; the consensus counts 90 minutes inside 2 hours (Battelino 2023, from memory); hours for ketones: ours',
  look({ longHighs }, targets) {
    if (!longHighs.ok) return untold(longHighs.why);
    const { list, top, level } = longHighs.value;
    if (list.length === 0) return absent;
    const highs = list.map(({ high }) => high);
    const second = targets.limits['mg/dL'].veryHigh !== null;
    const where = highs.flatMap((each) => evidenceOf(each, second));
    return holds(
      {
        count: count(list.length),
        ...whenOf(highs, second),
        length: minutes(LONG),
        longest: minutes(Math.max(...list.map((each) => each.minutes))),
        highest: extremes(highs).extreme,
        limit: second ? limit('very-high') : glucose(level),
        share: share(longHighs.value.share),
        unbroken: minutes(longHighs.value.unbroken),
        ketones: word(asksForKetones(longHighs.value, !second) ? 'yes' : 'no'),
        ...insulinNoted(longHighs.value),
        ofDays: count(longHighs.value.days),
        topDays: count(top.length),
        withInsulin: count(list.filter(({ insulin }) => insulin > 0).length),
        withFood: count(list.filter(({ food }) => food > 0).length),
      },
      daysOf(where).length > 0 ? where : highs.flatMap((each) => evidenceOf(each)),
      lastsForHours(longHighs.value) ? 'hours' : undefined,
    );
  },
};

const lastsForHours = ({ unbroken, mostInDay }: LongHighs): boolean =>
  unbroken >= KETONES.unbroken || mostInDay >= KETONES.inDay;

const asksForKetones = (highs: LongHighs, pregnancy: boolean): boolean => pregnancy || lastsForHours(highs);

/**
 * On which of the days with most of it insulin is noted. Doses are told where any are; long-acting insulin and a pump's
 * rates apart from them, since they stand in a log every day and say nothing about a meal.
 */
function insulinNoted({ top, insulinDays, basalDays, basal, days }: LongHighs) {
  const doses = insulinDays > 0;
  const topBasal = top.filter((day) => day.basal).length;
  const on = doses ? top.filter(({ insulin }) => insulin).length : topBasal;
  const all = doses ? insulinDays : basalDays;
  const noted = all === 0 ? 'none' : on === 0 ? 'elsewhere' : on === top.length ? 'all' : 'some';
  return {
    noted: word(noted),
    kinds: word(kindsOf(doses, basal)),
    basal: word(basal),
    insulinDays: count(all),
    topInsulin: count(on),
    basalDays: count(basalDays),
    topBasal: count(topBasal),
    // Only where a day has none noted: beside "on 14 of 14 days" it contradicts what it stands by.
    gaps: word(all < days ? 'told' : [insulinDays, basalDays].some((on) => on > 0 && on < days) ? 'other' : 'no'),
  };
}
