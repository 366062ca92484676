import { fingerprint } from './bytes/hash.ts';
import type { Found } from './findings/index.ts';
import { type Indices, indicesOf } from './indices/index.ts';
import { comparedWithOf, type EarlierVisits, earlierVisits } from './measures/earlier.ts';
import { measure } from './measures/index.ts';
import type { Choice, ColumnAccount, Input, Issue, Ledger, Loss } from './model/input.ts';
import type { Measures } from './model/measures.ts';
import type { Settings } from './model/settings.ts';
import type { TargetSet } from './model/targets.ts';
import type { ComparedWith } from './model/thenAndNow.ts';
import type { Timeline } from './model/timeline.ts';
import { readInputs } from './readers/index.ts';
import { targetSets } from './targets/index.ts';
import { buildTimeline } from './timeline/index.ts';
import { leaveOutUnread, withoutLog } from './timeline/leftOut.ts';
import { acceptance, lossesOf } from './timeline/losses.ts';
import type { SetAside } from './timeline/setAside.ts';
import { aboutOf, lookAll, type Topic } from './topics/index.ts';

/** How one file was understood, and what became of each of its rows. */
export interface FileAccount {
  name: string;
  /** Id of the input kind. */
  kind: string;
  /** SHA-256 of the bytes, hex. */
  hash: string;
  choices: Choice[];
  ledger: Ledger;
  /** Codes or names found in it. Hostile text. */
  persons: string[];
  /** Every column of its tables; in the account of how it was read, and not in an analysis, as it quotes cells. */
  columns?: ColumnAccount[];
  /** A layout that reads the file the same way without any detection; absent where it makes no sense. */
  layout?: unknown;
}

/** Everything known, in numbers, without a word. All papers and data files are made from it. */
export interface Analysis {
  ok: true;
  /** Of this shape; grows when a reader of the JSON would have to change. */
  schema: 3;
  /** Of the program. */
  version: string;
  /** 12 hex digits of what the numbers depend on: files, settings, version. Not of the identity line. */
  hash: string;
  settings: Settings;
  files: FileAccount[];
  /** Over all files. */
  ledger: Ledger;
  /** Of the readings and notes in the ledger, those on days outside the period. */
  outside: { readings: number; notes: number };
  targets: TargetSet;
  timeline: Timeline;
  measures: Measures;
  /** Only when asked for. */
  indices?: Indices;
  /** Every finding in order of print, also those that are absent or could not be told. */
  found: Found[];
  /** What to talk about, the first foremost. */
  topics: Topic[];
  /** What the rules gave, where somebody chose another topic; null: none. */
  topicByRule?: Topic | null;
  issues: Issue[];
  /** Every place that was not used, complete, where the issues tell only the first of many. */
  setAside: SetAside[];
  /** Files of which 1 % or more could not be used. */
  losses: Loss[];
  /** Files that could not be read at all, and without which the papers are made. */
  missing: string[];
}

/** No numbers can be given. At least one issue is a refusal and says what would settle it. */
export interface Refusal {
  ok: false;
  files: FileAccount[];
  ledger: Ledger;
  outside: { readings: number; notes: number };
  issues: Issue[];
  /** Every place that was not used, complete, where the issues tell only the first of many. */
  setAside: SetAside[];
  /** Files of which 1 % or more could not be used. */
  losses: Loss[];
  /** Files that could not be read at all, and without which the papers are made. */
  missing: string[];
}

/** Reads and places the files: the first half, which a person can look at before anything is counted. */
export function intake(
  inputs: readonly Input[],
  settings: Settings,
):
  | Refusal
  | (Omit<Refusal, 'ok'> & { ok: true; timeline: Timeline; comparedWith: ComparedWith | null; visits: EarlierVisits }) {
  let { files, missing } = leaveOutUnread(readInputs([...inputs], settings));
  let built = buildTimeline(files, settings);
  for (let less = withoutLog(files, built.issues); less; less = withoutLog(files, built.issues)) {
    files = less.files;
    missing = [...missing, less.name];
    built = buildTimeline(files, settings);
  }
  const { timeline, issues: placed, ledgers, total, setAside, readingsOutside, notesOutside } = built;
  // What is said of a file as a whole needs its name too.
  const read = files.flatMap(({ name, issues }) =>
    issues.map((issue) => (issue.origin ? issue : { ...issue, origin: { file: name, line: 0 } })),
  );
  // A file that was refused says why; that nothing is left to report then goes without saying.
  const refused = read.some(({ level }) => level === 'refusal');
  const others = placed.filter(({ code }) => !(refused && code === 'no-readings'));
  const accepted = acceptance(settings.acceptLosses, settings.person.code);
  const { losses, issues: lost } = timeline ? lossesOf(files, setAside, accepted) : { losses: [], issues: [] };
  const earlier = timeline ? earlierVisits(files, settings, timeline) : NO_VISITS;
  const issues = gravestFirst([...read, ...lost, ...others, ...earlier.issues]);
  const intakeFacts = {
    files: files.map((file, i) => ({
      name: file.name,
      kind: file.kind,
      hash: file.hash,
      choices: file.choices,
      ledger: ledgers[i]!.ledger,
      persons: file.persons,
      ...(file.columns === undefined ? {} : { columns: file.columns }),
      ...(file.layout === undefined ? {} : { layout: file.layout }),
    })),
    ledger: total,
    outside: { readings: readingsOutside, notes: notesOutside },
    issues,
    setAside,
    losses,
    missing,
  };
  if (timeline === null || issues.some((issue) => issue.level === 'refusal')) return { ok: false, ...intakeFacts };
  const comparedWith = comparedWithOf(files, settings, timeline, targetSets[settings.targets], earlier.earlier);
  return { ok: true, ...intakeFacts, timeline, comparedWith, visits: earlier };
}

const NO_VISITS: EarlierVisits = { earlier: [], proved: true, issues: [] };

/**
 * The numbers half, start to end. A pure function: the same inputs, settings and version give the same analysis.
 * Never throws for what is in the files; what cannot be read safely is refused with its reasons.
 */
export function analyse(inputs: readonly Input[], settings: Settings, version: string): Analysis | Refusal {
  const read = intake(inputs, settings);
  if (!read.ok) return read;
  const { comparedWith, visits, ...rest } = read;
  const taken = { ...rest, files: rest.files.map(({ columns: _, ...file }) => file) };
  const targets = targetSets[settings.targets];
  const measures = measure(taken.timeline, targets, settings.logWords, {
    comparedWith,
    visits,
    medicines: settings.medicines ?? [],
    a1c: settings.a1c ?? null,
    dueDate: settings.dueDate ?? null,
    pregnancyGoals: settings.pregnancyGoals ?? null,
    inferMeals: settings.inferMeals ?? false,
  });
  const found = lookAll(measures, targets);
  const { issues, ...about } = aboutOf(found, measures, targets, settings);
  return {
    ...taken,
    schema: 3,
    version,
    hash: identity(taken.files, settings, version),
    settings,
    targets,
    measures,
    ...(settings.moreIndices ? { indices: indicesOf(taken.timeline, targets) } : {}),
    found,
    ...about,
    issues: gravestFirst([...taken.issues, ...issues]),
  };
}

/** Two papers with the same twelve digits show the same numbers, whoever's name stands on them. */
function identity(files: FileAccount[], { person: _, ...settings }: Settings, version: string): string {
  const inOrder = Object.entries(settings).sort(([a], [b]) => (a < b ? -1 : 1));
  return fingerprint(JSON.stringify([version, inOrder, files.map((file) => file.hash)])).slice(0, 12);
}

const GRAVITY = { refusal: 0, warning: 1, note: 2 } as const;
/** Of what is only to be checked, first what says that something is missing. */
const FIRST: ReadonlySet<Issue['code']> = new Set(['file-left-out', 'losses']);

/** The gravest first, alike in the order they came up: whoever reads only the first lines has read the worst. */
const gravestFirst = (issues: readonly Issue[]): Issue[] => {
  const place = ({ level, code }: Issue): number => 2 * GRAVITY[level] + (FIRST.has(code) ? 0 : 1);
  return issues.toSorted((a, b) => place(a) - place(b));
};
