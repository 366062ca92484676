import type { Analysis } from '../analyse.ts';
import type { Below } from '../model/words.ts';
import { csvText } from '../writers/csv.ts';
import { issueMessage, type Teller } from './tell.ts';

/** Every place that was not used, none left out, and what is wrong with files as a whole: a table to sort and filter. */
export function setAsideCsv(tell: Teller, { issues, setAside }: Pick<Analysis, 'issues' | 'setAside'>): string {
  const title = (name: Below<'cli.setAside'>): string => tell.say(`cli.setAside.${name}`);
  const ofFiles = issues
    .filter(({ level, origin }) => level !== 'note' && origin?.line === 0)
    .map((issue) => [
      issue.origin!.file,
      0,
      issueMessage(tell, issue),
      issue.actual ?? '',
      issue.expected ?? '',
      issue.code,
    ]);
  const ofLines = setAside.map(({ file, line, code, actual, expected }) => {
    const issue = {
      code,
      level: 'warning' as const,
      origin: { file, line },
      ...(actual ? { actual } : {}),
      ...(expected ? { expected } : {}),
    };
    return [file, line, issueMessage(tell, issue), actual ?? '', expected ?? '', code];
  });
  return csvText([
    (['file', 'line', 'reason', 'found', 'expected', 'code'] as const).map(title),
    ...ofFiles,
    ...ofLines,
  ]);
}
