import type { Speaker } from '../language/index.ts';
import type { GlucoseUnit } from '../model/glucose.ts';
import type { TargetSet } from '../model/targets.ts';
import { toMgPerDl } from '../units.ts';

/** What every chart needs besides its values: a voice, and the limits to draw. */
export interface ChartContext {
  speaker: Speaker;
  targets: TargetSet;
  /** Native unit of the data, whose published limits apply. */
  native: GlucoseUnit;
  /** Point size of the text on axes: 8.5 on the clinic report, 12 on the patient paper. */
  text: number;
  /** Points; that of a sheet where nothing is said. A few charts know how to be narrower. */
  width?: number;
}

/** Limits as heights on a mg/dL axis: the native unit's own limits, converted for drawing only. */
export function limitHeights({ targets, native }: ChartContext) {
  const limits = targets.limits[native];
  return {
    veryLow: toMgPerDl(limits.veryLow, native),
    low: toMgPerDl(limits.low, native),
    high: toMgPerDl(limits.high, native),
    veryHigh: limits.veryHigh === null ? null : toMgPerDl(limits.veryHigh, native),
  };
}

/** Width of amounts and times, of which most are figures (0.6 em each in the face, which sets figures alike; a blank a quarter). */
export const amountWidth = (text: string, size: number): number =>
  [...text].reduce((sum, letter) => sum + (letter === ' ' || letter === '\u00a0' ? 0.3 : 0.6), 0) * size;

/** Chinese characters, kana and Hangul: a full em wide each. */
const WIDE = /[\u1100-\u11ff\u2e80-\ud7ff\uf900-\ufaff\uff00-\uff60\u{20000}-\u{3ffff}]/gu;

/** Width a text will take, near enough to keep labels apart (measured mean of the face: 0.55 em a letter). */
export const roughWidth = (text: string, size: number): number =>
  (text.length * 0.55 + (text.match(WIDE)?.length ?? 0) * 0.45) * size;
