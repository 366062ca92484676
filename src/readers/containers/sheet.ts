import type { Input, Issue, ReadFile } from '../../model/input.ts';
import type { Hints } from '../hints.ts';
import type { CheckedSettings } from '../reading.ts';
import { readDelimited } from '../table/delimited.ts';

/** Choices that are about the text between, not about the sheet. */
const OF_TEXT = new Set(['encoding', 'delimiter']);

/** Reads a sheet that was laid out as text (workbook.ts); a sheet that holds no table is told and refuses nothing. */
export function readSheet(input: Input, settings: CheckedSettings, hints: Hints = {}): ReadFile {
  const file = readDelimited(input, settings, hints);
  return {
    ...file,
    kind: 'workbook',
    choices: file.choices.filter(({ id }) => !OF_TEXT.has(id)),
    issues: file.issues.map((issue) =>
      issue.code === 'columns-unclear' || issue.code === 'no-columns' ? withoutTable(issue) : issue,
    ),
  };
}

/** What a sheet would be refused for. A workbook often has such sheets beside the one that counts. */
function withoutTable(issue: Extract<Issue, { code: 'columns-unclear' | 'no-columns' }>): Issue {
  const { actual = '' } = issue;
  return { ...issue, code: 'sheet-without-table', level: 'warning', actual };
}
