import type { FileAccount } from '../analyse.ts';
import { fingerprint } from '../bytes/hash.ts';
import type { Timeline } from '../model/timeline.ts';

/** So many readings of a day, with so many different values, two people never have alike to the minute (ours). */
const READINGS = 4;
const VALUES = 3;
/** Dated amounts in a file, from which on it is somebody's log and no empty form (ours). */
const AMOUNTS = 3;
/** A file of fewer readings may be a form with an example in it. */
const EXAMPLE = 3;

/** How the traces of such a file begin: they prove nothing where the file lies with many. */
export const MAY_BE_EXAMPLE = 'example:';

/**
 * What can be only one person's, as short hashes: each file with readings or with a log's amounts, and each day of readings, so
 * that the same readings are seen under another name, in another layout or in a longer export too. An empty file, a header
 * without rows and a text without readings leave none: they lie in many folders and are nobody's.
 */
export function tracesOf(files: readonly FileAccount[], timeline: Timeline | null): string[] {
  const amounts = new Map<string, number>();
  for (const { amount, origin } of timeline?.notes ?? []) {
    if (amount !== undefined) amounts.set(origin.file, (amounts.get(origin.file) ?? 0) + 1);
  }
  const ofFiles = files.flatMap(({ name, hash, ledger }) => {
    const short = hash.slice(0, 16);
    if (ledger.used + ledger.duplicate >= EXAMPLE || (amounts.get(name) ?? 0) >= AMOUNTS) return [`file:${short}`];
    return ledger.used > 0 ? [`${MAY_BE_EXAMPLE}${short}`] : [];
  });
  return [...ofFiles, ...(timeline ? tracesOfDays(timeline) : [])];
}

function tracesOfDays({ days, readings }: Timeline): string[] {
  const texts = days.map(({ date }): string => date);
  const rows = new Uint32Array(days.length);
  const values: Set<number>[] = days.map(() => new Set());
  for (let i = 0; i < readings.count; i++) {
    const day = readings.day[i]!;
    texts[day] += `\n${readings.minute[i]} ${readings.native[i]}`;
    rows[day]!++;
    if (values[day]!.size < VALUES) values[day]!.add(readings.native[i]!);
  }
  return texts.flatMap((text, day) =>
    rows[day]! >= READINGS && values[day]!.size >= VALUES ? [`day:${fingerprint(text).slice(0, 16)}`] : [],
  );
}
