import type { ReadFile } from '../model/input.ts';
import type { Issue } from '../model/issues.ts';
import type { Layout } from '../schemas/layout.ts';

/** A layout of more letters is a file that somebody edits; it is not shown again (ours). */
const LONGEST = 600;
/** Letters of what the files of a run ask together; a folder of hundreds would ask each of them for all (ours). */
const MOST_SHARED = 2000;
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
 * answered before. Where two questions want different words for one thing, each keeps its own. Where the questions of other files come to
 * more than anybody reads, each file keeps to its own.
 */
export function proposeOneLayout(files: readonly ReadFile[], given: Layout | undefined): void {
  const all = files.map((file) => file.issues.flatMap((issue, at) => proposalOf(file, issue, at)));
  const before = given !== undefined && lengthOf(given) <= LONGEST ? fieldsOf(given) : {};
  const anywhere = all.flat().reduce((fields, one) => joined(fields, withoutPlaces(sharedOf(one))), {});
  const shared = joined(lengthOf(anywhere) <= MOST_SHARED ? anywhere : {}, before);
  for (const ofFile of all) {
    const ofItsFile = ofFile.reduce((fields, one) => joined(fields, sharedOf(one)), {});
    for (const { file, at, own } of ofFile) {
      const issue = file.issues[at]!;
      const answer = JSON.stringify(joined(joined(own, ofItsFile), shared));
      // It stays what it was, but for the answer it shows.
      if ('question' in issue && issue.question?.of === 'layout')
        file.issues[at] = { ...issue, question: { ...issue.question, answer } } as Issue;
    }
  }
}

const lengthOf = (fields: object): number => JSON.stringify(fields).length;

const sharedOf = ({ field, own }: Proposal): Fields => (ALONE.has(field) ? {} : own);

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
