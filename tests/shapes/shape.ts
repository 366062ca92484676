import type { Chance } from '../../src/stats/chance.ts';
import { TIME_FORMS } from './timeForms.ts';
import { KNOWN_KINDS, LANGUAGES, UNKNOWN_KINDS } from './words.ts';

/** Everything that a file can be like, one property a line; the first value of each is the plainest. */
export const PROPERTIES = {
  language: LANGUAGES,
  series: ['calm', 'quarter', 'minute', 'real-mmol', 'real-mg', 'real-long', 'always-high'],
  unit: ['mg/dL', 'mmol/L'],
  unitAt: [
    'header',
    'tail',
    'column',
    'cell',
    'preamble',
    'row',
    'nowhere',
    'foreign',
    'header-wrong',
    'preamble-wrong',
    'column-wrong',
  ],
  number: ['plain', 'comma', 'long', 'thousandths', 'exponent', 'own-digits'],
  time: Object.keys(TIME_FORMS),
  start: ['late', 'early', 'new-year', 'spring', 'autumn'],
  notes: ['none', 'columns', 'columns-zeros', 'kind-shared', 'kind-own', 'second-table', 'own-file'],
  each: ['many', 'two', 'one'],
  vocabulary: [...KNOWN_KINDS, ...UNKNOWN_KINDS],
  decoy: [
    ...['none', 'cholesterol', 'lactate', 'triglycerides', 'urine', 'coverage', 'predicted', 'mean', 'sugar', 'pulse'],
    ...['ketones', 'steps', 'trend', 'target', 'battery', 'protein', 'nameless', 'current'],
  ],
  decoyAt: ['after', 'before'],
  person: [
    ...[
      'none',
      'above',
      'record-above',
      'birth-above',
      'id-above',
      'column',
      'first-and-last',
      'record',
      'email',
      'user',
    ],
    ...['two-column', 'two-last-names', 'two-records', 'two-emails', 'two-files', 'two-unclear', 'two-ids'],
  ],
  delimiter: [',', ';', '\t', '|'],
  encoding: ['utf-8', 'utf-8-mark', 'utf-16le', 'utf-16be', 'utf-16le-bare', 'windows-1252'],
  lineEnd: ['\n', '\r\n', '\r'],
  preamble: ['none', 'title', 'title-blank', 'sep', 'long', 'dates'],
  footer: ['none', 'sum', 'mean', 'words', 'mean-by-day', 'blank'],
  defect: [
    ...['none', 'quoted-thousand', 'odd-date', 'blank-lines', 'cut-row', 'mark-inside', 'odd-decimal', 'header-again'],
    ...['no-value-words', 'zero', 'sentinel', 'value-turned-date', 'clock-reset', 'future', 'row-too-long', 'repeats'],
    ...['padded', 'apostrophe', 'formula-text', 'many-columns', 'other-delimiter', 'unit-turns', 'unit-turns-named'],
    ...['order-turns', 'order-flipped', 'hours-to-24', 'half-lost', 'no-last-line-end', 'comment-lines', 'line-break'],
    ...['contradiction', 'stray-quote', 'header-twice-named', 'empty-column', 'sums-by-day'],
  ],
  container: [
    ...['text', 'workbook', 'gzip', 'zip', 'wide', 'two-files', 'old-workbook', 'open-sheet'],
    ...['records', 'records-in-object', 'record-lines'],
    ...['fhir-bundle', 'fhir-lines', 'open-mhealth', 'open-mhealth-lines'],
    ...['blanks', 'day-headings', 'counted', 'yearless', 'days-across'],
  ],
  recordForm: ['single', 'series', 'interval', 'mixed-units'],
  order: ['oldest-first', 'newest-first'],
  second: ['none', 'finger', 'nameless-few', 'other-unit', 'twin'],
  secondClock: ['none', 'utc', 'uploaded', 'nameless', 'serial'],
  limits: ['none', 'sign', 'words', 'short', 'or-equal', 'phrase'],
  quoting: ['needed', 'all'],
  header: ['plain', 'capitals', 'absent'],
} satisfies Record<string, string[]>;

export type Property = keyof typeof PROPERTIES;
export type Shape = Record<Property, string> & { seed: number };
export const NAMES = Object.keys(PROPERTIES) as Property[];

/** The unit that the file names cannot be that of its numbers. */
export const isUnitWrong = ({ unitAt }: Pick<Shape, 'unitAt'>): boolean => unitAt.endsWith('-wrong');
/** Whether the rows stand in JSON, each a record of its own. */
export const isRecords = ({ container }: Pick<Shape, 'container'>): boolean => container.startsWith('record');
/** Whether the text is set as people set it by hand: see byHand.ts. */
export const isByHand = ({ container }: Pick<Shape, 'container'>): boolean =>
  ['blanks', 'day-headings', 'counted', 'yearless', 'days-across'].includes(container);
/** Whether a second person's rows stand in a file of their own. */
export const isTwoFiles = ({ person }: Pick<Shape, 'person'>): boolean =>
  person === 'two-files' || person === 'two-ids';
/** Whether the rows stand in a sheet of a spreadsheet program. */
export const isSheet = ({ container }: Pick<Shape, 'container'>): boolean =>
  ['workbook', 'old-workbook', 'open-sheet'].includes(container);

export const pick = <T>(from: readonly T[], next: Chance): T => from[Math.floor(next() * from.length)]!;

/** The plainest shape of all. */
export function plainest(seed: number): Shape {
  return { seed, ...Object.fromEntries(NAMES.map((name) => [name, PROPERTIES[name][0]!])) } as Shape;
}

/** How often a property leaves its plainest value, where it does not always. */
const SELDOM: Partial<Record<Property, number>> = {
  defect: 0.55,
  decoy: 0.5,
  person: 0.45,
  secondClock: 0.25,
  second: 0.25,
  header: 0.12,
  quoting: 0.2,
  encoding: 0.4,
  container: 0.3,
  footer: 0.4,
  each: 0.3,
  preamble: 0.5,
};

/** Values that make a shape open or forbidden: drawn seldom, so that most shapes are closed. */
const RARE = new Set([
  ...['always-high', 'foreign', 'header-wrong', 'preamble-wrong', 'column-wrong', 'nowhere', 'early', 'absent', 'twin'],
  'nameless-few',
  ...[
    'two-column',
    'two-last-names',
    'two-records',
    'two-emails',
    'two-files',
    'two-unclear',
    'two-ids',
    ...UNKNOWN_KINDS,
  ],
  ...['iso-Z', 'seconds', 'millis', 'unit-turns', 'order-turns', 'order-flipped', 'kind-shared', 'kind-own'],
]);

export function drawn(next: Chance, seed: number): Shape {
  const shape = plainest(seed);
  for (const name of NAMES) {
    if (next() >= (SELDOM[name] ?? 1)) continue;
    shape[name] = pick<string>(PROPERTIES[name], next);
    if (RARE.has(shape[name]) && next() < 0.75) shape[name] = pick<string>(PROPERTIES[name], next);
    if (RARE.has(shape[name]) && next() < 0.75) shape[name] = PROPERTIES[name][0]!;
  }
  return shape;
}
