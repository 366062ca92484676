import type { Loss, ReadFile } from '../model/input.ts';
import type { Issue, IssueCode } from '../model/issues.ts';
import { DAY_MS } from '../time/calendar.ts';
import type { PlacedFile } from './placed.ts';
import type { SetAside } from './setAside.ts';

/** From this share of a file on a loss is said where it matters, and from this on no report is made unasked (both ours). */
const SAID = 0.01;
const REFUSED = 0.05;
/** One odd date in ten rows stops nobody: fewer entries than this are only said (ours). */
const FEW = 5;

/**
 * What is set aside and no loss: nothing was there, a device or whoever wrote the record said that it counts for nothing,
 * or it is a kind of record that is understood and no reading; and remarks on a whole file.
 */
const NO_LOSS: ReadonlySet<IssueCode> = new Set([
  'no-value',
  'value-absent',
  'sentinel-value',
  'row-of-other-sensor',
  'status-not-usable',
  'taken-back',
  'value-over-period',
  'specimen-not-sensor',
  'unit-contradicts-layout',
  'unit-contradicts-user',
  'export-count',
  'export-errors',
  'export-file-missing',
]);

/** What should have been a reading or a note in each file and could not be used, told file by file from 1 % on. */
export function lossesOf(
  files: readonly ReadFile[],
  setAside: readonly SetAside[],
  accepted: (file: string) => boolean,
): { losses: Loss[]; issues: Issue[] } {
  const reported = files.flatMap((file) => {
    const { name, readings, notes, faults } = file;
    const lost = setAside.filter((one) => one.file === name && !NO_LOSS.has(one.code));
    // What the timeline set aside stands among the entries already.
    const unread = faults.filter(({ code }) => !NO_LOSS.has(code)).length;
    const of = readings.count + notes.length + unread;
    if (lost.length === 0 || lost.length < SAID * of) return [];
    // Times told twice have a limit of their own.
    const grave = lost.filter(({ code }) => code !== 'row-contradicts').length;
    const loss: Loss = { file: name, lost: lost.length, of, accepted: accepted(name) };
    // A log that was read in part never costs the papers.
    const refused = readings.count > 0 && !loss.accepted && grave >= FEW && grave >= REFUSED * of;
    return [{ loss, issue: issueOf(loss, refused) }];
  });
  return { losses: reported.map(({ loss }) => loss), issues: reported.map(({ issue }) => issue) };
}

function issueOf({ file, lost, of }: Loss, refused: boolean): Issue {
  const loss = { origin: { file, line: 0 }, actual: { is: 'lost', lost, of } } as const;
  if (!refused) return { code: 'losses', level: 'warning', ...loss };
  return { code: 'losses-refused', level: 'refusal', ...loss, question: { of: 'losses', file } };
}

/**
 * Refuses files of which too many times are told twice and differently: readings of two people, or of two exports that
 * disagree. All within a day of one another they are none of that: a clock that was set back, two sensors at a change.
 */
export function contradictionsIn(
  placed: readonly PlacedFile[],
  times: readonly number[][],
  accepted: (file: string) => boolean,
): Issue[] {
  return placed.flatMap(({ file, at }, f): Issue[] => {
    const lost = times[f]!.length;
    const span = times[f]!.at(-1)! - times[f]![0]!;
    if (lost < FEW || lost < REFUSED * at.length || span <= DAY_MS || accepted(file.name)) return [];
    return [
      {
        code: 'times-contradict',
        level: 'refusal',
        origin: { file: file.name, line: 0 },
        actual: { is: 'lost', lost, of: at.length },
        question: { of: 'losses', file: file.name },
      },
    ];
  });
}

/** Whether the losses of a file were accepted: by its name, that of the archive or workbook it lies in, or the person's code. */
export const acceptance = (names: readonly string[] = [], code?: string): ((file: string) => boolean) => {
  return (file) => names.some((name) => name === file || file.startsWith(`${name}/`) || name === code);
};
