import type { Look } from '../model/look.ts';
import type { Params } from '../model/quantity.ts';
import { a1cDiffers } from './a1cDiffers.ts';
import { alarmsAtNight } from './alarmsAtNight.ts';
import { beforeHighs } from './beforeHighs.ts';
import { beforeLows } from './beforeLows.ts';
import { beforeUnsteady } from './beforeUnsteady.ts';
import { bestDays } from './bestDays.ts';
import { bestWindow } from './bestWindow.ts';
import { briefLows } from './briefLows.ts';
import { changedLows } from './changedLows.ts';
import { changedRange } from './changedRange.ts';
import { changeNotTold } from './changeNotTold.ts';
import { cvOverLimit } from './cvOverLimit.ts';
import { dawnRise } from './dawnRise.ts';
import { daysOutOfRange } from './daysOutOfRange.ts';
import { exerciseKinds } from './exerciseKinds.ts';
import { exerciseOrRest } from './exerciseOrRest.ts';
import { extraCarbsFirst } from './extraCarbsFirst.ts';
import { fastFalls } from './fastFalls.ts';
import { fewNotes } from './fewNotes.ts';
import type { Finding } from './finding.ts';
import { fingersticksDiffer } from './fingersticksDiffer.ts';
import { foodLongerHigh } from './foodLongerHigh.ts';
import { foodShorterHigh } from './foodShorterHigh.ts';
import { goalsThenAndNow } from './goalsThenAndNow.ts';
import { highAfterMeals } from './highAfterMeals.ts';
import { highAfterWindow } from './highAfterWindow.ts';
import { insulinAfterMeal } from './insulinAfterMeal.ts';
import { largerMeals } from './largerMeals.ts';
import { lateNotes } from './lateNotes.ts';
import { longLows } from './longLows.ts';
import { longVeryHigh } from './longVeryHigh.ts';
import { lowAfterExercise } from './lowAfterExercise.ts';
import { lowAfterInsulinOnly } from './lowAfterInsulinOnly.ts';
import { lowAfterMeal } from './lowAfterMeal.ts';
import { lowsAtNight } from './lowsAtNight.ts';
import { lowsAveragesHide } from './lowsAveragesHide.ts';
import { lowsClustered } from './lowsClustered.ts';
import { lowsOnFirstDay } from './lowsOnFirstDay.ts';
import { lowsSeen } from './lowsSeen.ts';
import { lowsWithoutAlarm } from './lowsWithoutAlarm.ts';
import { medicinesNoted } from './medicinesNoted.ts';
import { nightsWithoutData } from './nightsWithoutData.ts';
import { noLowsSeen } from './noLowsSeen.ts';
import { notEnoughData } from './notEnoughData.ts';
import { oddStretches } from './oddStretches.ts';
import { overnightFall } from './overnightFall.ts';
import { pressedLows } from './pressedLows.ts';
import { readingsAtLimits } from './readingsAtLimits.ts';
import { reboundAfterLows } from './reboundAfterLows.ts';
import { standingStill } from './standingStill.ts';
import { steadyNights } from './steadyNights.ts';
import { timeInRange } from './timeInRange.ts';
import { timeLowOverGoal } from './timeLowOverGoal.ts';
import { veryLow } from './veryLow.ts';
import { weekendMeals } from './weekendMeals.ts';
import { wideSpread } from './wideSpread.ts';

/** Every finding, in the order of print: enough data, lows, nights, what went well, time in range, highs, the rest. */
const registered = [
  notEnoughData,
  veryLow,
  lowsSeen,
  longLows,
  lowsAtNight,
  nightsWithoutData,
  lowsClustered,
  timeLowOverGoal,
  lowsAveragesHide,
  changedLows,
  goalsThenAndNow,
  briefLows,
  noLowsSeen,
  standingStill,
  pressedLows,
  lowsOnFirstDay,
  lowsWithoutAlarm,
  alarmsAtNight,
  overnightFall,
  bestWindow,
  bestDays,
  steadyNights,
  changedRange,
  changeNotTold,
  timeInRange,
  daysOutOfRange,
  longVeryHigh,
  highAfterWindow,
  reboundAfterLows,
  dawnRise,
  wideSpread,
  fastFalls,
  cvOverLimit,
  a1cDiffers,
  readingsAtLimits,
  oddStretches,
  fingersticksDiffer,
  medicinesNoted,
  beforeLows,
  beforeHighs,
  beforeUnsteady,
  extraCarbsFirst,
  exerciseOrRest,
  lowAfterExercise,
  exerciseKinds,
  lowAfterMeal,
  lowAfterInsulinOnly,
  foodLongerHigh,
  foodShorterHigh,
  largerMeals,
  insulinAfterMeal,
  weekendMeals,
  highAfterMeals,
  fewNotes,
  lateNotes,
] as const;

/** The id of a finding; no other name compiles where one is asked for. */
export type FindingId = (typeof registered)[number]['id'];

export const findings: readonly Finding<FindingId, Params>[] = registered;

/** What one finding saw. */
export interface Found {
  id: FindingId;
  look: Look;
}
