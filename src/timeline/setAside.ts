import type { Fault, ReadFile } from '../model/input.ts';
import type { Outcome } from './ledger.ts';
import { OTHER_SENSOR, SET_ASIDE, SKIPPED_HOUR } from './placed.ts';
import { clockText, valueText } from './samples.ts';

/** A place of any file that was not used, with the reason. */
export type SetAside = Fault & { file: string };

const REASON: Record<number, 'row-contradicts' | 'row-of-other-sensor' | 'row-in-skipped-hour'> = {
  [SET_ASIDE]: 'row-contradicts',
  [OTHER_SENSOR]: 'row-of-other-sensor',
  [SKIPPED_HOUR]: 'row-in-skipped-hour',
};

/** Everything set aside by the readers and on the way to the timeline, in order of files and lines; none left out. */
export function listSetAside(files: ReadFile[], outcomes?: Outcome[]): SetAside[] {
  return files.flatMap((file, f) => {
    const listed: SetAside[] = file.faults.map((fault) => ({ file: file.name, ...fault }));
    const outcome = outcomes?.[f];
    if (outcome) listed.push(...lostReadings(file, outcome.readings), ...lostNotes(file, outcome.notes));
    return listed.sort((a, b) => a.line - b.line);
  });
}

function lostReadings({ name, readings }: ReadFile, lost: Uint8Array): SetAside[] {
  const listed: SetAside[] = [];
  for (let i = 0; i < lost.length; i++) {
    const code = REASON[lost[i]!];
    if (code === undefined) continue;
    const actual = `${clockText(readings.wall[i]!)} ${valueText(readings, i)}`;
    listed.push({ file: name, line: readings.line[i]!, code, actual });
  }
  return listed;
}

function lostNotes({ name, notes }: ReadFile, lost: Uint8Array): SetAside[] {
  return notes
    .filter((_, n) => lost[n] === SET_ASIDE)
    .map(({ origin }) => ({ file: name, line: origin.line, code: 'skipped-hour-note' }));
}
