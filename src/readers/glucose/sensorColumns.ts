import type { Choice } from '../../model/input.ts';
import type { Role, TableLayout } from '../../schemas/layout.ts';
import type { IssueBook } from '../book.ts';
import { curveOf, isSmooth } from '../evidence/curve.ts';
import { groupsOf } from '../evidence/groups.ts';
import type { Kinds } from '../evidence/kinds.ts';
import { askMeaning, askSensor, meaning } from '../evidence/questions.ts';
import type { Column } from '../table/header.ts';
import { cellText, type Records } from '../table/records.ts';
import type { Table } from '../table/tables.ts';
import { settleMark } from './decimalMark.ts';
import { awayFromSensor, closeTogether, comesAsSensor, compareColumns, medianStep } from './density.ts';
import { applyUnitColumn, CELL, type GlucoseCells, readGlucoseCells } from './glucoseCell.ts';
import { settleUnit, type UnitWords } from './glucoseUnit.ts';
import { cutAt } from './unitChange.ts';

/** A settled glucose column and what its numbers are. */
export interface GlucoseColumn {
  cells: GlucoseCells;
  is: 'reading' | 'fingerstick';
}

export interface GlucoseContext {
  records: Records;
  table: Table;
  columns: Column[];
  kinds: Kinds | undefined;
  wall: Float64Array;
  unitWords: UnitWords;
  layout: TableLayout | undefined;
  book: IssueBook;
  choices: Choice[];
  lineOf: (k: number) => number;
  /** Another file of this person holds a sensor's readings. */
  sensorElsewhere: boolean;
}

/** Reads and settles every glucose column of a table: decimal mark, unit, sensor or finger stick. Undefined after a refusal. */
export function settleGlucose(context: GlucoseContext): GlucoseColumn[] | undefined {
  const { columns, book, choices, lineOf } = context;
  const found = rawColumns(context);
  const unitColumn = columns.find((column) => column.role === 'unit');
  const settled: GlucoseColumn[] = [];
  const turned = new Set<number>();
  // Sensor columns first, so that finger sticks without a unit can lean on theirs.
  found.sort((a, b) => Number(a.is === 'fingerstick') - Number(b.is === 'fingerstick'));
  for (const entry of found) {
    const { cells } = entry;
    if (cells.filled === 0) continue;
    if (unitColumn) applyUnitColumn(cells, context.records, context.table.from, unitColumn);
    if (!settleMark(cells, lineOf, context.layout?.decimalMark, book, choices)) return undefined;
    const sensor = settled.find((other) => other.is === 'reading');
    const leaning = entry.is === 'fingerstick' && sensor?.cells.column.unit && !cells.column.unit;
    if (leaning) cells.column = { ...cells.column, unit: sensor.cells.column.unit! };
    const { index } = cells.column;
    if (cutAt(cells) !== undefined) turned.add(index);
    const unit = settleUnit(cells, lineOf, { ...context.unitWords, turned: turned.has(index) }, book, choices);
    if (!unit) return undefined;
    if (!unitColumn) cells.column = { ...cells.column, unit };
    if (cells.column.maybe && !isSmooth(curveOf(numbersOf(cells), context.wall))) {
      askMeaning(book, cells, context.unitWords.headerLine);
      return undefined;
    }
    if (entry.is === 'glucose') {
      // Where words tell the rows apart, they tell what each is.
      const rare = sensor && !context.kinds && cells.filled * 2 < sensor.cells.filled;
      if (rare && awayFromSensor(cells, sensor.cells, context.wall)) {
        askMeaning(book, cells, context.unitWords.headerLine, 'ignore');
        return undefined;
      }
      const step = medianStep(cells, context.wall);
      entry.is = kindOf(cells, context.wall, step, sensor?.cells, context.sensorElsewhere);
      const value = entry.is === 'reading' ? 'sensor' : 'finger-stick';
      const evidence = Number.isNaN(step)
        ? ({ is: 'few-rows' } as const)
        : ({ is: 'minutes-between', minutes: Math.round(step) } as const);
      choices.push({ id: 'glucose-kind', value, by: Number.isNaN(step) ? 'default' : 'file', evidence });
      if (entry.is === 'fingerstick') {
        book.add('sparse-glucose', 'warning', 0, {
          actual: cells.column.name,
          expected: evidence,
          question: meaning({ [cells.column.name]: 'sensor' }),
        });
      }
    }
    settled.push({ cells, is: entry.is });
  }
  return withoutDoubles(settled, context);
}

/**
 * Once a sensor is known, other values never join it: few, rare or scattered ones are finger sticks. A column that is about as full is
 * another form of the same, or a second sensor, and is asked for (`withoutDoubles`).
 */
function kindOf(
  cells: GlucoseCells,
  wall: Float64Array,
  step: number,
  sensor: GlucoseCells | undefined,
  elsewhere: boolean,
): 'reading' | 'fingerstick' {
  if (sensor && cells.filled * 2 >= sensor.filled) return 'reading';
  if (sensor) return 'fingerstick';
  if (Number.isNaN(step)) return elsewhere && !closeTogether(cells, wall) ? 'fingerstick' : 'reading';
  return comesAsSensor(cells, wall, step) ? 'reading' : 'fingerstick';
}

/** The plain numbers of a column by row. */
const numbersOf = ({ value, state }: GlucoseCells): Float64Array =>
  value.map((number, k) => (state[k] === CELL.number ? number : Number.NaN));

function rawColumns(context: GlucoseContext): { cells: GlucoseCells; is: 'reading' | 'fingerstick' | 'glucose' }[] {
  const { records, table, columns, kinds, wall } = context;
  const found: { cells: GlucoseCells; is: 'reading' | 'fingerstick' | 'glucose' }[] = [];
  const read = (column: Column, only?: (k: number) => boolean) =>
    readGlucoseCells(
      records,
      table.from,
      table.to,
      column,
      (k) => !Number.isNaN(wall[k]) && (only === undefined || only(k)),
    );
  const byRole: [Role, 'reading' | 'fingerstick' | 'glucose'][] = [
    ['sensor', 'reading'],
    ['glucose', 'glucose'],
    ['fingerstick', 'fingerstick'],
  ];
  if (!kinds) {
    for (const [role, is] of byRole) {
      for (const column of columns) if (column.role === role) found.push({ cells: read(column), is });
    }
    return found;
  }
  const kindAt = (k: number) => kinds.of(cellText(records, table.from + k, kinds.column.index));
  const shared = columns.filter((column) => ['value', 'glucose', 'sensor'].includes(column.role));
  for (const column of shared) {
    found.push({ cells: read(column, (k) => kindAt(k) === 'reading'), is: 'reading' });
    found.push({ cells: read(column, (k) => kindAt(k) === 'glucose'), is: 'glucose' });
    found.push({ cells: read(column, (k) => kindAt(k) === 'fingerstick'), is: 'fingerstick' });
  }
  for (const column of columns)
    if (column.role === 'fingerstick') found.push({ cells: read(column), is: 'fingerstick' });
  return found.filter(({ cells }) => cells.filled > 0);
}

/** Fewer readings than this are no series that values could stand among; fewer judged values say nothing of the others (ours). */
const SERIES = 24;
const FEWEST_JUDGED = 6;

/** Whether the values of a second column lie on the curve of the first: what a sensor stored and what was asked of it. */
function joins(a: GlucoseCells, b: GlucoseCells, wall: Float64Array): boolean {
  const code = Int16Array.from(a.state, (state, k) => (state === CELL.number ? 1 : b.state[k] === CELL.number ? 2 : 0));
  const value = a.value.map((number, k) => (code[k] === 1 ? number : code[k] === 2 ? b.value[k]! : Number.NaN));
  const rows = [0, 1, 2].map((one) => code.filter((other) => other === one).length);
  const groups = groupsOf({ words: ['', '1', '2'], code, rows }, value, wall);
  if (!groups.every(({ verdict }) => verdict !== 'other')) return false;
  const [few, many] = groups.filter(({ curve }) => curve.n > 0).sort((x, y) => x.curve.n - y.curve.n);
  // What stands here and there among a sensor's readings may be a meter's: only what lies on their curve is a sensor's.
  if (!few || !many || few.curve.n * 2 > many.curve.n || many.curve.n < SERIES) return true;
  return few.near && few.curve.n - few.unjudged >= FEWEST_JUDGED;
}

/** Two sensor columns filled in the same rows: the same in two units, or two things of which only one can be meant. */
function withoutDoubles(
  settled: GlucoseColumn[],
  { book, choices, wall }: GlucoseContext,
): GlucoseColumn[] | undefined {
  const sensors = settled.filter((entry) => entry.is === 'reading');
  const dropped = new Set<GlucoseColumn>();
  for (let i = 0; i < sensors.length; i++) {
    if (dropped.has(sensors[i]!)) continue;
    for (let j = i + 1; j < sensors.length; j++) {
      const [a, b] = [sensors[i]!, sensors[j]!];
      if (dropped.has(a) || dropped.has(b) || a.cells.column.index === b.cells.column.index) continue;
      const { both, same } = compareColumns(a.cells, b.cells);
      const disjoint = both <= Math.min(a.cells.filled, b.cells.filled) * 0.05;
      if (disjoint ? joins(a.cells, b.cells, wall) : same === both) {
        if (disjoint) continue;
      } else {
        askSensor(book, a.cells.column, b.cells.column);
        return undefined;
      }
      dropped.add(b);
      choices.push({
        id: 'values',
        value: a.cells.column.name,
        by: 'file',
        evidence: { is: 'same-of', name: b.cells.column.name, same, of: both },
      });
    }
  }
  return settled.filter((entry) => !dropped.has(entry));
}
