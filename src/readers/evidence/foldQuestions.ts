import type { ReadFile } from '../../model/input.ts';
import type { Issue } from '../../model/issues.ts';

type OfKinds = Extract<Issue, { code: 'kinds-unknown' | 'column-parts-values' }>;
type Groups = OfKinds['actual'];

/**
 * What several tables of a file leave open alike, or one question after the other about one column, is one question: it shows all groups
 * that it is about. Its answer is the file's (`proposeOneLayout`), so nothing of the others is lost.
 */
export function foldQuestions(file: ReadFile): void {
  const known = new Map<string, { at: number; lines: Set<number | undefined> }>();
  const kept: Issue[] = [];
  for (const issue of file.issues) {
    const key = subjectOf(issue);
    const first = key === undefined ? undefined : known.get(key);
    if (first) {
      const [before, line] = [kept[first.at]!, issue.origin?.line];
      if (isOfKinds(before) && isOfKinds(issue))
        kept[first.at] = { ...before, actual: joined(before.actual, issue.actual, first.lines.has(line)) };
      first.lines.add(line);
      continue;
    }
    if (key !== undefined) known.set(key, { at: kept.length, lines: new Set([issue.origin?.line]) });
    kept.push(issue);
  }
  file.issues = kept;
}

/** What a question is about: of two with one subject the answer to the first is that to the second. Undefined for all that asks nothing. */
function subjectOf(issue: Issue): string | undefined {
  if (issue.level !== 'refusal' || !('question' in issue) || !issue.question) return undefined;
  const { code, question } = issue;
  // Each series is looked at by itself, and each file is lost or not.
  if (code.startsWith('series-') || question.of === 'losses') return undefined;
  const field = question.of === 'layout' ? question.field : '';
  return JSON.stringify([
    code,
    question.of,
    field,
    field === 'meanings' ? columnsOf(issue) : field === 'kinds' ? issue.expected : '',
  ]);
}

/** The columns that a question about meanings names. */
function columnsOf(issue: Issue): unknown[] {
  const shown = [issue.actual, issue.expected];
  return shown.map((one) =>
    typeof one === 'object' && one !== null && 'name' in one ? one.name : typeof one === 'string' ? one : '',
  );
}

const isOfKinds = (issue: Issue): issue is OfKinds =>
  issue.code === 'kinds-unknown' || issue.code === 'column-parts-values';

/** The groups of both, those of one word as one; where both are of the same rows, each word is counted once. */
function joined(first: Groups, second: Groups, sameRows: boolean): Groups {
  const all = new Map(first.map((group) => [group.word, group]));
  for (const group of second) {
    const own = all.get(group.word);
    all.set(group.word, !own ? group : sameRows ? own : together(own, group));
  }
  return [...all.values()].sort((a, b) => b.rows - a.rows);
}

function together(a: Groups[number], b: Groups[number]): Groups[number] {
  const rows = a.rows + b.rows;
  if (a.is === 'bare-group') return { ...b, rows };
  if (b.is === 'bare-group') return { ...a, rows };
  return { ...a, rows, low: Math.min(a.low, b.low), high: Math.max(a.high, b.high) };
}
