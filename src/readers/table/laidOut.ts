import type { Choice, ReadFile } from '../../model/input.ts';

/**
 * What a table gave that a reader laid out from its input, put back to the lines (from 1) and records (from 0) of the
 * input itself. The readings are changed in place.
 */
export function putBack(
  { issues, faults, readings, notes }: ReadFile,
  lineOf: (line: number) => number,
  recordOf: (row: number) => number,
): Pick<ReadFile, 'issues' | 'faults' | 'readings' | 'notes'> {
  for (let i = 0; i < readings.count; i++) {
    readings.line[i] = lineOf(readings.line[i]!);
    readings.row[i] = recordOf(readings.row[i]!);
  }
  const moved = <T extends { line: number }>(place: T): T => ({ ...place, line: lineOf(place.line) });
  return {
    issues: issues.map((issue) => (issue.origin ? { ...issue, origin: moved(issue.origin) } : issue)),
    faults: faults.map(moved),
    readings,
    notes: notes.map((note) => ({ ...note, row: recordOf(note.row), origin: moved(note.origin) })),
  };
}

/** A choice whose evidence names a line of a laid-out table, with the line of the input. */
export function atLine(choice: Choice, lineOf: (line: number) => number): Choice {
  const { evidence } = choice;
  return evidence && 'line' in evidence
    ? ({ ...choice, evidence: { ...evidence, line: lineOf(evidence.line) } } as Choice)
    : choice;
}
