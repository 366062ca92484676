import type { KindRole, TableLayout } from '../../schemas/layout.ts';
import { type RowKind, rowKind } from '../notes/kinds.ts';
import type { Column } from '../table/header.ts';
import { asciiDigits, readNumber } from '../table/numbers.ts';
import { cellText, locate, type Records } from '../table/records.ts';
import type { Table } from '../table/tables.ts';
import { conceptsOf, tokens } from '../table/vocabulary.ts';
import type { Claimed } from './claim.ts';
import { isSmooth } from './curve.ts';
import { SAMPLE } from './describe.ts';
import { besideReadings, FEW, hasOddFew } from './fewOfKind.ts';
import { type Group, groupsOf, mainGroup } from './groups.ts';
import { codeColumn } from './words.ts';

/** The column that tells rows apart by kind, and what each of its words says. */
export interface Kinds {
  column: Column;
  /** Undefined: nothing known, so the row is set aside and told. */
  of(word: string): RowKind | 'ignore' | undefined;
  /** Words that were not known by themselves and are now. */
  learnt: Record<string, KindRole>;
}

/** A column whose words part the values, and nobody knows what they mean. */
export interface OpenKinds {
  column: Column;
  groups: Group[];
  /** The words that need a meaning, and those that show one. */
  unknown: string[];
  seen: Record<string, KindRole>;
  /** It may be a column of kinds; else its words part the values in a way that a column of kinds would. */
  kinds: boolean;
}

const OF_ROLE: Record<KindRole, RowKind | 'ignore'> = {
  sensor: 'reading',
  glucose: 'glucose',
  fingerstick: 'fingerstick',
  calibration: 'calibration',
  insulin: 'insulin',
  'insulin-rate': 'insulin-rate',
  carbohydrate: 'meal',
  exercise: 'exercise',
  medication: 'medication',
  note: 'text',
  alarm: 'alarm',
  'sensor-event': 'sensor',
  ignore: 'ignore',
};

/** So many numbers can be codes of kinds (ours). */
const CODES = 8;

/**
 * Finds the column of kinds by its words and by what they do to the values. A word that nobody knows is a sensor's when its values
 * run as a sensor's do; any other that has values is asked for. Columns that part nothing go into `accounts`.
 */
export function findKinds(
  records: Records,
  table: Table,
  { columns, profiles, accounts }: Claimed,
  wall: Float64Array,
  layout: TableLayout | undefined,
): { kinds?: Kinds; open?: OpenKinds } {
  const values = columns.filter(({ role }) => role === 'value' || role === 'glucose' || role === 'sensor');
  if (values.length === 0) return {};
  const shared = columns.some(({ role }) => role === 'value');
  let value: Float64Array | undefined;
  let kinds: Kinds | undefined;
  let open: OpenKinds | undefined;
  const candidates = columns.filter((column, i) => {
    if (column.role !== 'kind' && (column.role !== 'ignore' || column.given || accounts.has(column.index)))
      return false;
    const { kind, distinct, decimals } = profiles[i]!;
    return (
      // No cell of a sample says nothing of the rows outside it.
      (kind === 'empty' && table.to - table.from > SAMPLE) ||
      kind === 'constant' ||
      kind === 'category' ||
      kind === 'text' ||
      (kind === 'number' &&
        (column.role === 'kind' ||
          (distinct <= CODES && decimals === 0 && !conceptsOf(tokens(column.name)).has('other'))))
    );
  });
  // A header that promises kinds is heard first.
  candidates.sort((a, b) => Number(b.role === 'kind') - Number(a.role === 'kind'));
  for (const column of candidates) {
    const coded = codeColumn(records, table.from, table.to, column.index, wall, column.role === 'kind');
    if (!coded || coded.words.length === 1) continue;
    // What has a unit in its name and nothing but numbers below it is measured, and is no code.
    if (column.role === 'ignore' && column.unit !== undefined && coded.words.every(isNumber)) continue;
    // Numbers of many sizes are measured; only few can be codes, unless their header promises kinds.
    const isMeasured = profiles[columns.indexOf(column)]!.kind === 'number' || coded.words.every(isNumber);
    if (column.role !== 'kind' && coded.words.length > CODES + 1 && isMeasured) continue;
    const meaning = (word: string): RowKind | 'ignore' | undefined => {
      const said = layout?.kinds?.[word];
      return said ? OF_ROLE[said] : word === '' ? undefined : rowKind(word);
    };
    const filled = coded.rows.reduce((sum, n, i) => sum + (i > 0 ? n : 0), 0);
    const knownRows = coded.rows.reduce((sum, n, i) => sum + (i > 0 && meaning(coded.words[i]!) ? n : 0), 0);
    value ??= valuesOf(records, table, values);
    const groups = groupsOf(coded, value, wall);
    const parts = groups.some(({ verdict }) => verdict === 'other' || verdict === 'between');
    const byWords = filled > 0 && knownRows * 2 >= filled && (column.role === 'kind' || shared);
    if (besideReadings(groups, column, shared)) {
      columns[columns.indexOf(column)] = { ...column, role: 'note' };
      continue;
    }
    const isKinds = !kinds && ((column.given && column.role === 'kind') || byWords || (parts && knownRows > 0));
    if (!isKinds) {
      const isAsked =
        (parts && groups.some(({ verdict, curve }) => verdict !== 'same' && curve.n >= FEW)) ||
        hasOddFew(groups, column, shared);
      if (isAsked && !kinds) open ??= openWords(column, groups, column.role === 'kind' || shared);
      else
        accounts.set(
          column.index,
          groups.length === 1 ? { why: 'constant', evidence: groups[0]!.word } : { why: 'no-groups' },
        );
      continue;
    }
    const learnt: Record<string, KindRole> = {};
    const unknown = unknownWords(groups, meaning, learnt);
    if (unknown.length > 0) {
      open ??= { column, groups, unknown, seen: learnt, kinds: true };
      continue;
    }
    const of = new Map(coded.words.map((word) => [word, learnt[word] ? OF_ROLE[learnt[word]] : meaning(word)]));
    kinds = { column, learnt, of: (word) => of.get(word) };
    for (const [word, said] of Object.entries(layout?.kinds ?? {})) if (of.has(word)) learnt[word] = said;
  }
  return { ...(kinds ? { kinds } : {}), ...(open ? { open } : {}) };
}

/** A column that parts the values and knows none of its words: what runs like a sensor is proposed as one, and nothing else is. */
function openWords(column: Column, groups: Group[], kinds: boolean): OpenKinds {
  const main = mainGroup(groups);
  const seen: Record<string, KindRole> = main && isSmooth(main.curve) ? { [main.word]: 'sensor' } : {};
  // Rows without a word and a value, such as a sum below the table, need none.
  const unknown = groups
    .filter(({ word, curve }) => !seen[word] && (word !== '' || curve.n > 0))
    .map(({ word }) => word);
  return { column, groups, unknown, seen, kinds };
}

/** Words with values that need a meaning; a sensor's curve, and what lies on it, is learnt by itself. */
function unknownWords(
  groups: Group[],
  meaning: (word: string) => RowKind | 'ignore' | undefined,
  learnt: Record<string, KindRole>,
): string[] {
  const main = mainGroup(groups);
  const reads = groups.some(({ word, curve }) => curve.n > 0 && ['reading', 'glucose'].includes(meaning(word) ?? ''));
  if (main && meaning(main.word) === undefined && isSmooth(main.curve)) {
    if (reads) return [main.word];
    learnt[main.word] = 'sensor';
  }
  const sensor = main && (learnt[main.word] || meaning(main.word) === 'reading' || meaning(main.word) === 'glucose');
  // Where no word is known, few values are as likely doses as many.
  const least = groups.some(({ word }) => meaning(word) !== undefined) ? FEW : 1;
  const unknown: string[] = [];
  for (const { word, curve, verdict } of groups) {
    if (meaning(word) !== undefined || learnt[word] || curve.n === 0) continue;
    if (sensor && verdict === 'same' && word !== '' && curve.pairs > 0) learnt[word] = 'sensor';
    else if (curve.n >= least || word === '') unknown.push(word);
  }
  return unknown;
}

const isNumber = (word: string): boolean => /^(?:[+-]?\d+(?:[.,]\d+)?)?$/.test(asciiDigits(word));

/** `4 IU`: the number before a unit that stands in the cell. */
function leadingNumber(text: string): number {
  const found = /^'?([+-]?\d{1,5}(?:[.,]\d{1,4})?)\s*[^\d\s.,:/-]/.exec(asciiDigits(text));
  return found ? Number(found[1]!.replace(',', '.')) : Number.NaN;
}

/** The first number that a row has in any of the columns of values. */
function valuesOf(records: Records, { from, to }: Table, columns: Column[]): Float64Array {
  const value = new Float64Array(to - from).fill(Number.NaN);
  const span = { from: 0, to: 0 };
  const look = { mark: 0, after: 0 };
  for (let r = from; r < to; r++) {
    for (const { index } of columns) {
      if (!locate(records, r, index, span)) continue;
      const plainNumber = readNumber(records.bytes, span.from, span.to, look);
      value[r - from] = Number.isNaN(plainNumber) ? leadingNumber(cellText(records, r, index)) : plainNumber;
      break;
    }
  }
  return value;
}
