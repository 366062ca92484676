import * as z from 'zod';
import '../jitless.ts';
import { estimate } from '../parts.ts';
import { episodes, longHighs, lowStories, lowsLined, pressedLows, rebounds } from './episodes.ts';
import {
  coverage,
  curveRange,
  dailySummary,
  dawnRise,
  dayWindows,
  gmi,
  hourShares,
  labA1c,
  meanGlucose,
  modalDay,
  night,
  overnight,
  rates,
  timeInBands,
  weekParts,
} from './levels.ts';
import { measured } from './measured.ts';
import { comparison, correction, meal, noteLog, outcomeNotes, session } from './occasions.ts';
import { fixedTimes, insulinNoted, pregnancy, remark } from './readingOrders.ts';
import { alarms, fingersticks, medicinesNoted, oddStretches, sensors } from './sensors.ts';
import { thenAndNow } from './thenAndNow.ts';
import { lastTime, visitByVisit } from './visits.ts';

export const measures = z.strictObject({
  coverage: measured(coverage),
  mean: measured(meanGlucose),
  sdMgPerDl: measured(z.number()),
  cvPercent: measured(z.number()),
  cvRangePercent: measured(estimate),
  gmi: measured(gmi),
  labA1c: measured(labA1c),
  timeInBands: measured(timeInBands),
  modalDay: measured(modalDay),
  curveRanges: measured(z.array(curveRange)),
  hourly: measured(z.array(hourShares)),
  lows: measured(episodes),
  highs: measured(episodes),
  longHighs: measured(longHighs),
  lowStories: measured(lowStories),
  nights: measured(z.array(night)),
  daily: measured(z.array(dailySummary)),
  windows: measured(dayWindows),
  dawnRise: measured(dawnRise),
  rebounds: measured(rebounds),
  overnight: measured(overnight),
  rates: measured(rates),
  sensors: measured(sensors),
  oddStretches: measured(oddStretches),
  pressedLows: measured(pressedLows),
  fingersticks: measured(fingersticks),
  medicinesNoted: measured(medicinesNoted),
  alarms: measured(alarms),
  thenAndNow: measured(thenAndNow),
  noteLog: measured(noteLog),
  meals: measured(z.array(meal)),
  exercise: measured(z.array(session)),
  corrections: measured(z.array(correction)),
  comparisons: measured(z.array(comparison)),
  notedBefore: measured(z.array(outcomeNotes)),
  fixedTimes: measured(fixedTimes),
  weekParts: measured(weekParts),
  lowsLined: measured(lowsLined),
  insulinNoted: measured(insulinNoted),
  pregnancy: measured(pregnancy),
  remarks: measured(z.array(remark)),
  lastTime: measured(lastTime),
  visitByVisit: measured(visitByVisit),
});
