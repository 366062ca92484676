import type { Fault, Issue } from '../model/input.ts';

/** Rows told one by one for each code; the rest share one issue with a count. */
const TOLD_SINGLY = 20;
/** Letters of a file's own text in an issue. */
const LONGEST = 120;
/** A row with a time and nothing else: worth only a note, and set aside all the same. */
const EMPTY_ROW = 'no-value';

export interface IssueBook {
  /** `line` 0 = the file as a whole. */
  add(
    code: string,
    level: Issue['level'],
    line?: number,
    more?: Pick<Issue, 'actual' | 'expected' | 'option' | 'count'>,
  ): void;
  list(): Issue[];
  /** Every place told with its line, however often. */
  faults(): Fault[];
  refused(): boolean;
}

/** Collects issues of one file, so that a file of nothing but faults stays readable. */
export function openBook(file: string): IssueBook {
  const issues: Issue[] = [];
  const faults: Fault[] = [];
  const told = new Map<string, { count: number; rest?: Issue }>();
  return {
    add(code, level, line = 0, more = {}) {
      if (line > 0 && (level === 'warning' || code === EMPTY_ROW)) {
        const fault: Fault = { line, code };
        if (more.actual !== undefined) fault.actual = more.actual.slice(0, LONGEST);
        if (more.expected !== undefined) fault.expected = more.expected.slice(0, LONGEST);
        faults.push(fault);
      }
      const entry = told.get(code) ?? { count: 0 };
      told.set(code, entry);
      entry.count++;
      if (entry.rest) {
        entry.rest.count = entry.count - TOLD_SINGLY;
        return;
      }
      const issue: Issue = { code, level };
      if (line > 0) issue.origin = { file, line };
      if (more.actual !== undefined) issue.actual = more.actual.slice(0, LONGEST);
      if (more.expected !== undefined) issue.expected = more.expected.slice(0, LONGEST);
      if (more.option !== undefined) issue.option = more.option;
      if (more.count !== undefined) issue.count = more.count;
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
