import type { Analysis } from '../analyse.ts';
import type { Shown } from '../model/detail.ts';
import type { Below } from '../model/words.ts';
import { csvText } from '../writers/csv.ts';
import { issueMessage, type Teller } from './teller.ts';

/** Every place that was not used, none left out, and what is wrong with files as a whole: a table to sort and filter. */
export function setAsideCsv(tell: Teller, { issues, setAside }: Pick<Analysis, 'issues' | 'setAside'>): string {
  const title = (name: Below<'cli.setAside'>): string => tell.say(`cli.setAside.${name}`);
  const ofFiles = issues
    .filter(({ level, origin }) => level !== 'note' && origin?.line === 0)
    .map((issue) => [
      issue.origin!.file,
      0,
      issueMessage(tell, issue),
      shown(tell, issue.actual),
      shown(tell, issue.expected),
      issue.code,
    ]);
  const ofLines = setAside.map(({ file, line, ...issue }) => {
    const message = issueMessage(tell, { ...issue, level: 'warning', origin: { file, line } });
    return [file, line, message, shown(tell, issue.actual), shown(tell, issue.expected), issue.code];
  });
  return csvText([
    (['file', 'line', 'reason', 'found', 'expected', 'code'] as const).map(title),
    ...ofFiles,
    ...ofLines,
  ]);
}

/** A text of the file as it stands: the table is for sorting and filtering. */
const shown = ({ speaker }: Teller, found: Shown | undefined): string =>
  found === undefined || typeof found === 'string' ? (found ?? '') : speaker.value({ q: 'shown', value: found });
