import type { Issue } from '../model/input.ts';
import { csvText } from '../writers/csv.ts';
import { issueMessage, type Teller } from './tell.ts';

/** Every place something was wrong, as a table to sort and filter. */
export function setAsideCsv(tell: Teller, issues: readonly Issue[]): string {
  const title = (name: string): string => tell.say(`cli.setAside.${name}`);
  const rows = issues
    .filter((issue) => issue.level !== 'note' && issue.origin !== undefined)
    .map((issue) => [
      issue.origin!.file,
      issue.origin!.line,
      issueMessage(tell, issue),
      issue.actual ?? '',
      issue.code,
    ]);
  return csvText([['file', 'line', 'reason', 'found', 'code'].map(title), ...rows]);
}
