import type { Issue, PersonMark, ReadFile } from '../model/input.ts';
import { twoPersons } from '../readers/evidence/persons.ts';
import { DAY_MS, MINUTE_MS } from '../time/calendar.ts';
import { DUPLICATE, type PlacedFile } from './placed.ts';
import { clockText } from './samples.ts';

/** A jump back this long, in a file that is otherwise in order, is told. Shorter ones are jitter. */
const LEAST_JUMP = 10 * MINUTE_MS;

/** More jumps than this and the file is simply not in order, which is no error: it is sorted. */
const MOST_JUMPS = 3;

/** So many are named. */
const NAMED = 6;

/** Refuses inputs of more than one person: readings of two people must never be joined. */
export function onePerson(files: ReadFile[]): Issue | undefined {
  const marks = files.flatMap(
    ({ marks, persons }) => marks ?? persons.map((text): PersonMark => ({ kind: 'code', text })),
  );
  const strangers = twoPersons(marks);
  if (!strangers) return undefined;
  const named = [
    ...new Set(
      [...strangers, ...marks.filter(({ kind }) => kind === strangers[0].kind)].map(({ text }) => text.trim()),
    ),
  ];
  return { code: 'two-persons', level: 'refusal', actual: named.slice(0, NAMED), count: named.length };
}

/**
 * Places where time in a file runs back by less than a day onto readings it does not repeat: somebody set the clock
 * back. Whole repeated days are duplicates and not told here.
 */
export function clockSetBack(placed: PlacedFile, hasZone: boolean): Issue[] {
  const { at, lost, file, newestFirst } = placed;
  const jumps: number[] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < at.length; k++) {
    const i = newestFirst ? at.length - 1 - k : k;
    const here = at[i]!;
    if (Number.isNaN(here)) continue;
    const back = last - here;
    if (back >= LEAST_JUMP && back < DAY_MS && lost[i] !== DUPLICATE) jumps.push(i);
    if (jumps.length > MOST_JUMPS) return [];
    last = here;
  }
  return jumps.map((i): Issue => {
    const jump = {
      level: 'warning',
      origin: { file: file.name, line: file.readings.line[i]! },
      actual: clockText(file.readings.wall[i]!),
    } as const;
    if (hasZone) return { code: 'clock-set-back', ...jump };
    return { code: 'clock-set-back-written', ...jump, question: { of: 'zone' } };
  });
}
