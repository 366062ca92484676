import type { Detail, Shown } from '../model/detail.ts';
import type { Fault, Issue, IssueCode, Level, Tells } from '../model/issues.ts';

/** Rows told one by one for each code; the rest share one issue with a count. */
const TOLD_SINGLY = 20;
/** Letters of a file's own text in an issue. */
const LONGEST = 120;
/** A row with a time and nothing else: worth only a note, and set aside all the same. */
const EMPTY_ROW = 'no-value';

/** What has to be given beside a code, and may be left out where all of it may. */
export type More<Code extends IssueCode> = Code extends IssueCode
  ? Record<never, never> extends Tells<Code>
    ? [more?: Tells<Code>]
    : [more: Tells<Code>]
  : never;

export interface IssueBook {
  /** `line` 0 = the file as a whole. */
  add<Code extends IssueCode>(code: Code, level: Level, line?: number, ...more: More<Code>): void;
  list(): Issue[];
  /** Every place told with its line, however often. */
  faults(): Fault[];
  refused(): boolean;
}

/** Collects issues of one file, so that a file of nothing but faults stays readable. */
export function openBook(file: string): IssueBook {
  const issues: Issue[] = [];
  const faults: Fault[] = [];
  const counts = new Map<string, { count: number; rest?: Issue }>();
  return {
    add(code, level, line = 0, ...[given]) {
      const more: Tells<IssueCode> = given ?? {};
      const tells = {
        ...(more.actual === undefined ? {} : { actual: cut(more.actual) }),
        ...(more.expected === undefined ? {} : { expected: cut(more.expected) }),
      };
      if (line > 0 && (level === 'warning' || code === EMPTY_ROW)) faults.push({ line, code, ...tells } as Fault);
      const entry = counts.get(code) ?? { count: 0 };
      counts.set(code, entry);
      entry.count++;
      if (entry.rest) {
        entry.rest.count = entry.count - TOLD_SINGLY;
        return;
      }
      // The signature has checked that these belong together.
      const issue = {
        code,
        level,
        ...(line > 0 ? { origin: { file, line } } : {}),
        ...tells,
        ...(more.question === undefined ? {} : { question: more.question }),
        ...(more.count === undefined ? {} : { count: more.count }),
      } as Issue;
      if (entry.count > TOLD_SINGLY) {
        issue.count = 1;
        entry.rest = issue;
      }
      issues.push(issue);
    },
    list: () => issues,
    faults: () => faults,
    refused: () => issues.some((issue) => issue.level === 'refusal'),
  };
}

/**
 * How many places each of these issues stands for: one, but for the last of those that share a code and a file where there were
 * more than are told one by one.
 */
export function placesOf(issues: readonly Issue[]): number[] {
  const counted = new Map<string, number>();
  return issues.map(({ code, origin, count = 1 }) => {
    const of = `${code} ${origin?.file ?? ''}`;
    const nth = (counted.get(of) ?? 0) + 1;
    counted.set(of, nth);
    return nth === TOLD_SINGLY + 1 ? count : 1;
  });
}

/** The same with every text of the file cut to what can be shown. */
function cut(shown: Shown): Shown {
  if (typeof shown === 'string') return shown.slice(0, LONGEST);
  if (typeof shown === 'number') return shown;
  if (Array.isArray(shown)) return shown.map((one: string | Detail) => cut(one)) as string[] | Detail[];
  const short = Object.entries(shown).map(([name, value]) => [name, typeof value === 'string' ? cut(value) : value]);
  return Object.fromEntries(short) as Detail;
}
