import type { DateOrder, Detail, NotText, Plain, Shown, ValueKind } from './detail.ts';
import type { Origin } from './input.ts';
import type { Question } from './question.ts';

type Is<Name extends Detail['is']> = Extract<Detail, { is: Name }>;
type Word<Name extends Plain> = Extract<Detail, { is: Name }>;

/** Nothing but its place. */
type Bare = Record<never, never>;
/** What stood there: text of the file, and nothing of ours. */
type Found = Record<'actual', string>;
type Counted = Record<'count', number>;
interface Asks<Of extends Question['of']> {
  question: Extract<Question, { of: Of }>;
}
interface Pair<Actual extends Shown, Expected extends Shown> {
  actual: Actual;
  expected: Expected;
}

/**
 * Every issue there is, by code, with what it tells. Codes and names are those of the words in templates
 * (`issues`); docs/issues.md lists them. A code or a field that does not stand here does not compile.
 */
export interface IssueTells {
  // Archives and files as a whole.
  'archive-damaged': Bare;
  'archive-locked': Bare;
  'archive-too-large': Bare;
  workbook: Bare;
  'workbook-locked': Bare;
  'file-empty': Bare;
  'too-many-lines': { expected: number };
  'line-too-long': { expected: number };
  'not-text': { actual: Word<NotText> };
  'encoding-guessed': Found & Counted;
  'letters-lost': Counted;
  'layout-invalid': { actual: readonly string[] } & Asks<'layout'>;
  'layout-does-not-fit': Bare;
  'place-is-named': Pair<string, string>;
  'test-data': Bare;
  // Tables of text.
  'no-columns': Found & Asks<'layout'>;
  'delimiter-unclear': Pair<string | Word<'tab'>, string | Word<'tab'>> & Asks<'layout'>;
  'stray-quote': Counted;
  'quote-unclosed': Found;
  'row-too-long': Found;
  'row-too-short': Found;
  'decimal-mark-is-delimiter': Pair<string, string> & Counted;
  'lines-above-table': Counted;
  'rows-other-delimiter': { actual: string | Word<'tab'> } & Counted;
  'no-rows': Bare;
  'columns-unclear': Found & Asks<'layout'>;
  'amounts-unread': Pair<string, Is<'values-seen'>> & Asks<'layout'>;
  'columns-ignored': { actual: readonly string[] } & Counted;
  'two-value-columns': Pair<string, string> & Asks<'layout'>;
  'kinds-unknown': { actual: Is<'group' | 'bare-group'>[]; expected: string } & Asks<'layout'>;
  'column-parts-values': { actual: Is<'group' | 'bare-group'>[]; expected: string } & Asks<'layout'>;
  'column-unknown': Pair<string, Is<'values-seen'>> & Asks<'layout'>;
  'column-of-both': Pair<string, Is<'both-cells'>> & Asks<'layout'>;
  'column-like-glucose': Pair<string, Is<'values-seen'>> & Asks<'layout'>;
  'sheet-without-table': Found & Asks<'layout'>;
  'kind-unknown': Found;
  'no-value': Partial<Found>;
  'rest-not-exercise': Counted;
  'unit-not-written': { actual: Is<'role' | 'named'>[] } & Asks<'layout'>;
  'amount-zero': Counted;
  // Times.
  'no-time': Found;
  'time-unreadable': Found;
  'times-unreadable': Found & Asks<'layout'>;
  'days-not-said': Found;
  'start-not-said': Found & Asks<'layout'>;
  'count-runs-back': Found;
  'counted-times': Found;
  'year-not-said': Found & Asks<'layout'>;
  'year-turns-unclear': Found & Asks<'day-order'>;
  'years-unclear': Found;
  'date-impossible': Found;
  'clock-not-set': Found | Pair<string, string>;
  'date-in-future': Found | Pair<string, string>;
  'no-time-of-day': Found;
  'clock-half-lost': Pair<string, Is<'half-read'>> & Asks<'layout'>;
  'half-of-day-unclear': Pair<string, string> & Asks<'layout'>;
  'two-clocks': Pair<Is<'column-cell'>, Is<'column-cell'>> & Asks<'layout'>;
  'date-order-unclear': Pair<Is<'date-read'>, Is<'date-read'>> & Asks<'day-order'>;
  'date-order-mixed': Pair<Is<'at-line'>[], Is<'order-span'>[]>;
  'date-order-odd': Pair<Is<'at-line'>[], Is<'order-span'>[]> & Asks<'day-order'>;
  'date-order-borrowed': Pair<Is<'at-line'>, Is<'order-of'>> & Asks<'day-order'>;
  'date-order-changes': Pair<Is<'at-line'>, Is<'at-line'>>;
  'dates-turned': Counted;
  'dates-year-day': Counted;
  'dates-turned-unclear': Found;
  'hours-to-24': Counted;
  'hours-to-24-unclear': Found;
  'date-order-contradicts-file': Pair<Detail, Word<DateOrder>>;
  'date-orders-differ': { actual: Word<DateOrder>[] };
  'serial-dates-unclear': Pair<Is<'serial-read'>, Is<'serial-read'>> & Asks<'layout'>;
  'second-60': Counted;
  'half-not-needed': Counted;
  'offsets-mixed': Pair<Is<'line'>, Is<'line'>> & Asks<'zone'>;
  'zones-in-file': { actual: Is<'at-line' | 'named'>[] } & Asks<'zone'>;
  'zone-contradicts-file': Pair<string, string>;
  'no-offset-means-utc': Counted;
  'interval-without-end': Counted;
  // Glucose.
  'decimal-marks-mixed': Pair<Is<'at-line'>[], string> & Asks<'layout'>;
  'decimal-mark-odd': Pair<Is<'at-line'>[], string>;
  'unit-unclear': Pair<Is<'values-seen'>, Is<'either-unit'>> & Asks<'unit'>;
  'unit-changes': Pair<Is<'either-unit'>, Is<'at-line' | 'values-before'>> & Asks<'layout'>;
  'unit-foreign': Pair<string, string>;
  'unit-line-contradicts': Pair<Is<'at-line'>, string> & Asks<'layout'>;
  'series-other-unit': { actual: Is<'middle-read'> } & Counted & Asks<'layout'>;
  'series-implausible': { actual: Is<'middle-read'> } & Counted & Asks<'layout'>;
  'series-jumps': Pair<Is<'in-unit'>, Is<'in-unit'>> & Counted & Asks<'layout'>;
  'series-rough': Pair<Is<'in-unit'>, Is<'in-unit'>> & Counted & Asks<'layout'>;
  'series-confirmed': { actual: Is<'middle-read'> };
  'unit-contradicts-file': Pair<string, string> & Asks<'layout'>;
  'unit-contradicts-layout': Pair<string, string>;
  'unit-contradicts-user': Pair<Is<'values-seen'>, string>;
  'unit-contradicts-values': Pair<Is<'values-seen'>, string> & Asks<'layout'>;
  'unit-coded': Pair<string, string> & Asks<'unit'>;
  'unit-not-of-code': Counted;
  'sparse-glucose': Pair<string, Is<'minutes-between' | 'few-rows'>> & Asks<'layout'>;
  'limit-unknown': Counted;
  'at-sensor-limit': { actual: readonly string[] } & Counted;
  'sentinel-value': Found | Pair<string, Is<'range'>>;
  'value-impossible': Pair<string, Is<'range'>>;
  'value-not-a-number': Found;
  'value-turned-date': Found;
  'value-of-note': Found;
  'value-unit-unknown': Found | Pair<string, string>;
  'value-without-unit': Found;
  'value-absent': { actual: string | Word<'no-reason'> };
  'value-over-period': { actual: string | Is<'minutes'> };
  'reading-without-clock': Found;
  'points-left-out': Counted;
  'series-unreadable': Found;
  'specimen-not-sensor': Found;
  'early-estimates': Counted;
  // JSON and records of other systems.
  'json-broken': Bare;
  'json-line-broken': Bare;
  'json-list-unread': Found & Counted;
  'json-unknown': Bare;
  'element-unknown': Bare;
  'schema-ignored': Found & Counted;
  'resource-ignored': Found & Counted;
  'results-ignored': { actual: Is<'days' | 'no-period'> } & Counted;
  'results-only': { actual: Is<'days' | 'no-period'> };
  'fhir-xml': Bare;
  'status-not-usable': { actual: string | Word<'no-status'> };
  'meaning-modified': Found;
  'taken-back': Found;
  'versions-contradict': Found;
  'export-count': Pair<Is<'file-rows'>, number>;
  'export-deletions': Counted;
  'export-errors': Counted;
  'export-file-missing': Found | Pair<string, number>;
  // Put together on one timeline.
  'two-persons': { actual: readonly string[] } & Counted;
  'no-readings': Bare;
  'no-readings-in-period': Found & Asks<'period'>;
  'bad-period': Found & Asks<'period'>;
  'unknown-zone': Found & Asks<'zone'>;
  'zones-differ': Pair<readonly string[], Is<'zone-row'>[]> & Asks<'zone'>;
  'offsets-missing': Pair<Is<'row-at'>, Is<'row-at'>> & Counted & Asks<'zone'>;
  'clock-utc': Pair<string, Is<'clock-at'>[]> & Counted & Asks<'zone'>;
  'offsets-change': { actual: readonly string[] } & Counted & Asks<'zone'>;
  'offsets-disagree': Pair<readonly string[], Is<'row-at'>[]> & Counted & Asks<'zone'>;
  'clock-set-back': Found;
  'clock-set-back-written': Found & Asks<'zone'>;
  'doubled-hour': Found & Counted;
  'skipped-hour': Found & Counted;
  'skipped-hour-note': Bare;
  'note-offsets': Counted & Asks<'zone'>;
  contradiction: { actual: Is<'reading-at'>[] };
  contradictions: Counted;
  'two-sensors': Found & Counted;
  losses: { actual: Is<'lost'> };
  'losses-refused': { actual: Is<'lost'> } & Asks<'losses'>;
  'times-contradict': { actual: Is<'lost'> } & Asks<'losses'>;
  'file-left-out': Bare;
  'visit-other-code': Pair<string, string>;
  'visit-other-days': { actual: readonly string[] };
  'visit-not-earlier': Found;
  'topic-not-found': Pair<string, readonly string[]>;
  'units-mixed': { expected: string } & Counted;
  'row-contradicts': Found;
  'row-in-skipped-hour': Found;
  'row-of-other-sensor': Found;
  // Settings and the page template.
  'settings-not-json': Bare;
  'settings-unknown-name': Pair<string, string>;
  'settings-wrong-value': Pair<string, string | Word<ValueKind>>;
  'template-address': Found;
  'template-attribute': Found;
  'template-element': Found;
  'template-headings': Pair<string, string>;
  'template-id': Found;
  'template-missing': Found;
  'template-name': Pair<string, string>;
  'template-place': Pair<string, string>;
  'template-style': Found;
}

export type IssueCode = keyof IssueTells;
export type Level = 'note' | 'warning' | 'refusal';

/** What an issue of this code tells; a field that it does not have is absent, so that any issue can be asked for it. */
export type Tells<Code extends IssueCode> = Code extends IssueCode ? Whole<IssueTells[Code]> : never;
type Whole<T> = T extends unknown ? T & Omit<Absent, keyof T> : never;
interface Absent {
  actual?: never;
  expected?: never;
  question?: never;
  count?: number;
}

/** The code with what it tells. */
type Coded<Code extends IssueCode> = { code: Code } & Tells<Code>;

/** Something to tell about the input. Never a sentence: the words live in templates, keyed by `code`. */
export type Issue = {
  [Code in IssueCode]: { level: Level; origin?: Origin } & Coded<Code>;
}[IssueCode];

/** One place that could not be used, whatever its row gave besides. Complete, unlike issues, which cut long lists. */
export type Fault = { [Code in IssueCode]: { line: number } & Coded<Code> }[IssueCode];
