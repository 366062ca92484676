import type { Input, ReadFile, ReadSettings } from '../../model/input.ts';
import type { Hints } from '../hints.ts';
import { readDelimited } from '../table/delimited.ts';

/** Choices that are about the text between, not about the sheet. */
const OF_TEXT = new Set(['encoding', 'delimiter']);
/** What a sheet without a table would be refused for. A workbook often has such sheets beside the one that counts. */
const NO_TABLE = new Set(['columns-unclear', 'no-columns']);

/** Reads a sheet that was laid out as text (workbook.ts); a sheet that holds no table is told and refuses nothing. */
export function readSheet(input: Input, settings: ReadSettings, hints: Hints = {}): ReadFile {
  const file = readDelimited(input, settings, hints);
  return {
    ...file,
    kind: 'workbook',
    choices: file.choices.filter(({ id }) => !OF_TEXT.has(id)),
    issues: file.issues.map((issue) =>
      NO_TABLE.has(issue.code) ? { ...issue, code: 'sheet-without-table', level: 'warning' } : issue,
    ),
  };
}
