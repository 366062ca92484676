import type { Issue } from '../model/input.ts';
import { asParams, issueMessage, printable, type Teller } from '../papers/teller.ts';
import { placesOf } from '../readers/book.ts';
import type { WrongUse } from './exits.ts';

export function wrongUse(tell: Teller, { key, details }: WrongUse): string {
  const { reason } = details;
  const said = reason === undefined ? details : { ...details, reason: { sentence: reasonText(tell, reason) } };
  return tell.speaker.repeat({ key: `cli.error.${key}`, params: asParams(said) });
}

/** What the system says in codes that people meet. */
const CODES = [
  ...([
    'ENOENT',
    'EACCES',
    'EPERM',
    'ENOSPC',
    'EROFS',
    'EISDIR',
    'ENOTDIR',
    'EEXIST',
    'EMFILE',
    'ENAMETOOLONG',
    'ELOOP',
  ] as const),
  ...(['EBUSY', 'EIO', 'ECONNREFUSED', 'ENOTFOUND', 'ETIMEDOUT'] as const),
];

/** The system's word for what went wrong in ours, with the code for who has to look it up; another as it stands. */
export function reasonText(tell: Teller, reason: string): string {
  const code = CODES.find((one) => one === reason);
  return code === undefined ? printable(reason) : `${tell.say(`cli.system.${code}`)}; ${code}`;
}

/** One issue as a line: where and what. Editors and terminals know `file:line:` as a place to jump to. */
function issueLine(tell: Teller, { origin }: Issue, message: string): string {
  if (!origin || (origin.line === 0 && message.includes(printable(origin.file)))) return message;
  return origin.line === 0
    ? tell.say('cli.told.placeNoLine', { file: origin.file, message: { sentence: message } })
    : tell.say('cli.told.place', { file: origin.file, line: String(origin.line), message: { sentence: message } });
}

/** So many of one kind are shown one by one; the rest are counted here and listed in full in the set-aside file. */
const SHOWN = 5;

/** Issues in the order they came up, each kind together and cut short with a count of the rest. */
export function issueLines(tell: Teller, issues: readonly Issue[], shown = SHOWN): string[] {
  const places = placesOf(issues);
  const kinds = new Map<string, { all: Issue[]; places: number }>();
  issues.forEach((issue, i) => {
    const kind = kinds.get(issue.code) ?? { all: [], places: 0 };
    kinds.set(issue.code, kind);
    kind.all.push(issue);
    kind.places += places[i]!;
  });
  return [...kinds.values()].flatMap(({ all, places }) => {
    const first = all.slice(0, shown);
    const rest = places - first.length;
    const lines = first.flatMap((issue) => {
      const message = issueMessage(tell, issue);
      const line = `${tell.say(`cli.told.level.${issue.level}`)}: ${issueLine(tell, issue, message)}`;
      if (issue.question === undefined) return [line];
      const option = tell.speaker.value({ q: 'question', value: issue.question });
      return message.includes(option) ? [line] : [line, `  ${tell.say('cli.told.option', { option })}`];
    });
    return rest > 0 ? [...lines, `  ${tell.say('cli.told.more', { n: rest })}`] : lines;
  });
}
