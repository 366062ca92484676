import type { ReadFile } from '../model/input.ts';
import type { Issue } from '../model/issues.ts';
import type { Layout } from '../schemas/layout.ts';

/** A layout of more letters is a file that somebody edits; it is not shown again (ours). */
const LONGEST = 600;
/** Where things stand in one file; another file has its own places. */
const PLACES = new Set(['columns', 'headerLine', 'firstLine', 'delimiter', 'encoding', 'tables']);
/** What a person has looked at is nobody else's answer. */
const ALONE = new Set(['series', 'whole']);

type Fields = Record<string, unknown>;

interface Proposal {
  file: ReadFile;
  at: number;
  field: string;
  own: Fields;
}

/**
 * Makes one layout of all that a run asks of it: whoever takes the line of one question has answered the others too, and keeps what was
 * answered before. Where two questions want different words for one thing, each keeps its own.
 */
export function proposeOneLayout(files: readonly ReadFile[], given: Layout | undefined): void {
  const all = files.flatMap((file) => file.issues.flatMap((issue, at) => proposalOf(file, issue, at)));
  const before = given !== undefined && JSON.stringify(given).length <= LONGEST ? fieldsOf(given) : {};
  const merged = all.map((one) => {
    const others = all.filter((other) => other !== one && !ALONE.has(other.field));
    let layout = one.own;
    for (const { file, own } of others) layout = joined(layout, file === one.file ? own : withoutPlaces(own));
    return joined(layout, before);
  });
  all.forEach(({ file, at }, i) => {
    const issue = file.issues[at]!;
    // It stays what it was, but for the answer it shows.
    if ('question' in issue && issue.question?.of === 'layout')
      file.issues[at] = { ...issue, question: { ...issue.question, answer: JSON.stringify(merged[i]) } } as Issue;
  });
}

function proposalOf(file: ReadFile, issue: Issue, at: number): Proposal[] {
  if (issue.level !== 'refusal' || !('question' in issue) || issue.question?.of !== 'layout') return [];
  const { field, answer } = issue.question;
  const own: unknown = answer === undefined ? undefined : JSON.parse(answer);
  return isFields(own) ? [{ file, at, field, own }] : [];
}

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const fieldsOf = (layout: Layout): Fields => Object.fromEntries(Object.entries(layout));

const withoutPlaces = (fields: Fields): Fields =>
  Object.fromEntries(Object.entries(fields).filter(([name]) => !PLACES.has(name)));

/** Both, name by name; where both speak of one name the first is heard. */
function joined(first: Fields, second: Fields): Fields {
  const all: Fields = { ...first };
  for (const [name, value] of Object.entries(second)) {
    const own = all[name];
    if (own === undefined) all[name] = value;
    else if (isFields(own) && isFields(value)) all[name] = joined(own, value);
  }
  return all;
}
