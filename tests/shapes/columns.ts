import type { Chance } from '../../src/stats/chance.ts';
import { gauss } from '../support/simulatedDays.ts';
import { clockAt } from './clockChange.ts';
import { amountText, glucoseText, readingText, spelt } from './numbers.ts';
import { isUnitWrong, type Shape } from './shape.ts';
import type { TimeForm } from './timeForms.ts';
import type { TrueNote, TrueReading, Truth } from './truth.ts';
import { kindWord, type Words } from './words.ts';

/** What one line of a table holds. */
export interface Row {
  wall: number;
  reading?: TrueReading;
  notes: TrueNote[];
}

export interface Column {
  name: string;
  /** As a layout calls it. */
  role: string;
  unit?: string;
  /** What stands under the name where units have a row of their own. */
  unitBelow?: string;
  cell(row: Row, k: number): string;
}

export interface Making {
  shape: Shape;
  words: Words;
  form: TimeForm;
  truth: Truth;
  next: Chance;
}

/** The unit that stands in the file; the wrong one where the shape says so. */
export function unitSaid({ shape }: Making, wrong: boolean): string {
  const unit = wrong ? (shape.unit === 'mg/dL' ? 'mmol/L' : 'mg/dL') : shape.unit;
  return spelt(unit, shape.language);
}

/** A bare word for low or high takes no unit. */
const unitBehind = ({ limit }: TrueReading, { limits }: Shape, unit: string): string =>
  limit !== 0 && (limits === 'words' || limits === 'short') ? '' : unit;

function nameWithUnit(name: string, unit: string, how: string): Pick<Column, 'name' | 'unitBelow'> {
  if (how === 'tail') return { name: `${name}, ${unit}` };
  if (how === 'row') return { name, unitBelow: unit };
  if (how === 'header' || how === 'header-wrong') return { name: `${name} (${unit})` };
  return { name };
}

export function timeColumns(making: Making): Column[] {
  const { form, words, truth, shape } = making;
  let before = -1;
  return form.columns(words, { wall: 0, offset: truth.offset }).map(({ name, role }, c) => ({
    name,
    role,
    cell: ({ wall }) => {
      const when = clockAt(truth, wall);
      const cells = form.cells(when, words);
      if (shape.time !== 'two-carried' || c > 0) return cells[c]!;
      // The date stands only where it changes.
      const day = Math.floor(when.wall / 86_400_000);
      const first = day !== before;
      before = day;
      return first ? new Date(when.wall).toISOString().slice(0, 10) : '';
    },
  }));
}

export function glucoseColumns(making: Making): Column[] {
  const { shape, words } = making;
  const wrong = isUnitWrong(shape);
  const foreign = shape.unitAt === 'foreign';
  const unit = foreign ? (shape.unit === 'mg/dL' ? 'g/L' : 'mmol/dL') : unitSaid(making, wrong);
  const scale = shape.unit === 'mg/dL' ? 100 : 10;
  const how = foreign ? 'header' : shape.unitAt;
  const cellUnit = shape.unitAt === 'cell' ? ` ${unit}` : '';
  const glucose: Column = {
    ...nameWithUnit(words.names.glucose!, unit, how),
    role: 'sensor',
    unit: shape.unit,
    cell: ({ reading }) => {
      if (!reading) return '';
      if (foreign) return String(Math.round((reading.native / scale) * 10_000) / 10_000);
      return readingText(reading, shape, words) + unitBehind(reading, shape, cellUnit);
    },
  };
  if (!shape.unitAt.startsWith('column')) return [glucose];
  const named: Column = { name: words.names.unit!, role: 'unit', cell: ({ reading }) => (reading ? unit : '') };
  return [glucose, named];
}

/** A further column of glucose beside the sensor's. */
export function secondColumns(making: Making): Column[] {
  const { shape, words } = making;
  if (shape.second === 'none') return [];
  const unit = unitSaid(making, false);
  const finger: Column['cell'] = ({ notes }) => {
    const stick = notes.find(({ kind }) => kind === 'fingerstick');
    return stick ? glucoseText(stick.amount!, shape) + (shape.unitAt === 'cell' ? ` ${unit}` : '') : '';
  };
  if (shape.second === 'finger')
    return [
      {
        ...nameWithUnit(words.names.fingerstick!, unit, shape.unitAt),
        role: 'fingerstick',
        unit: shape.unit,
        cell: finger,
      },
    ];
  if (shape.second === 'nameless-few')
    return [
      {
        ...nameWithUnit(`${words.names.glucose} 2`, unit, shape.unitAt),
        role: 'fingerstick',
        unit: shape.unit,
        cell: finger,
      },
    ];
  if (shape.second === 'twin')
    return [
      {
        ...nameWithUnit(`${words.names.glucose} 2`, unit, shape.unitAt),
        role: 'ignore',
        cell: ({ reading }, k) => {
          if (!reading) return '';
          const other = reading.native * (1.25 + 0.1 * Math.sin(k / 9));
          return glucoseText(shape.unit === 'mg/dL' ? Math.round(other) : Math.round(other * 10) / 10, shape);
        },
      },
    ];
  const other = unitSaid(making, true);
  return [
    {
      ...nameWithUnit(words.names.glucose!, other, shape.unitAt),
      role: 'ignore',
      cell: ({ reading }) => {
        if (!reading) return '';
        const { native, limit } = reading;
        const value = shape.unit === 'mg/dL' ? Math.round((native / 18.0156) * 10) / 10 : Math.round(native * 18.0156);
        const text = glucoseText(value, {
          ...shape,
          number: 'plain',
          unit: shape.unit === 'mg/dL' ? 'mmol/L' : 'mg/dL',
        });
        if (limit !== 0) return readingText({ ...reading, native: value }, { ...shape, number: 'plain' }, words);
        return shape.number === 'comma' ? text.replace('.', ',') : text;
      },
    },
  ];
}

/** Quantities that are no reading, with numbers that could be one. */
export function decoyColumns(making: Making): Column[] {
  const { shape, words, next } = making;
  const { decoy } = shape;
  if (decoy === 'none') return [];
  const mgdl = shape.unit === 'mg/dL';
  const size = mgdl ? 1 : 1 / 18.0156;
  const fmt = (value: number, decimals: number) => amountText(Number(value.toFixed(decimals)), shape);
  const sized = (value: number) => fmt(value * size, mgdl ? 0 : 1);
  const unit = unitSaid(making, false);
  let seen = 100;
  const kinds: Record<string, [string, (row: Row, k: number) => string]> = {
    cholesterol: [unit, (_, k) => (k % 40 === 7 ? sized(170 + 20 * gauss(next)) : '')],
    lactate: ['mmol/L', (_, k) => (k % 3 === 0 ? fmt(1.4 + 0.3 * next(), 1) : '')],
    triglycerides: [unit, (_, k) => (k % 25 === 3 ? sized(130 + 30 * next()) : '')],
    urine: [unit, (_, k) => (k % 30 === 4 ? sized(60 + 80 * next()) : '')],
    coverage: ['%', () => String(85 + Math.floor(next() * 15))],
    predicted: [unit, ({ reading }) => (reading ? sized((reading.native / size) * 1.06 + 8) : '')],
    mean: [
      unit,
      ({ reading }) => {
        if (!reading) return '';
        seen += (reading.native / size - seen) * 0.05;
        return sized(0.97 * seen);
      },
    ],
    sugar: [spelt('g', shape.language), (_, k) => (k % 29 === 5 ? String(5 + Math.floor(next() * 60)) : '')],
    pulse: ['1/min', () => String(58 + Math.floor(next() * 60))],
    ketones: ['mmol/L', (_, k) => (k % 15 === 2 ? fmt(0.2 + 0.5 * next(), 1) : '')],
    steps: ['', () => String(Math.floor(next() * 300))],
    trend: ['', () => ['→', '↗', '↘', '↑'][Math.floor(next() * 4)]!],
    target: [unit, () => sized(110)],
    battery: ['%', (_, k) => String(100 - (k % 60))],
    protein: [spelt('g', shape.language), (_, k) => (k % 31 === 6 ? String(4 + Math.floor(next() * 40)) : '')],
    nameless: ['', () => String(90 + Math.floor(next() * 70))],
    current: ['nA', ({ reading }) => (reading ? (reading.native / size / 8).toFixed(2) : '')],
  };
  const [own, cell] = kinds[decoy]!;
  const name = decoy === 'nameless' ? 'K3' : decoy === 'current' ? 'Raw' : words.decoys[decoy]!;
  return [{ name: own === '' ? name : `${name} (${own})`, role: 'ignore', cell }];
}

/** Notes each in a column of its own. */
export function noteColumns(making: Making): Column[] {
  const { shape, words } = making;
  const zero = shape.notes === 'columns-zeros' ? '0' : '';
  const of =
    (word: TrueNote['word'], read: (note: TrueNote) => string, none = ''): Column['cell'] =>
    ({ notes }) => {
      const note = notes.find((one) => one.word === word);
      return note ? read(note) : none;
    };
  const amount = (note: TrueNote) => amountText(note.amount!, shape);
  const own = (note: TrueNote) => note.words.join(' ');
  const [iu, g, min] = ['IU', 'g', 'min'].map((unit) => spelt(unit, shape.language));
  const { names } = words;
  return [
    { name: `${names.rapid} (${iu})`, role: 'insulin', unit: 'IU', cell: of('rapid', amount, zero) },
    { name: `${names.long} (${iu})`, role: 'insulin', unit: 'IU', cell: of('long', amount, zero) },
    { name: `${names.carbs} (${g})`, role: 'carbohydrate', unit: 'g', cell: of('meal', amount, zero) },
    { name: names.food!, role: 'food', cell: of('meal', own) },
    { name: names.exercise!, role: 'exercise', cell: of('exercise', own) },
    {
      name: `${names.duration} (${min})`,
      role: 'minutes',
      unit: 'min',
      cell: of('exercise', ({ minutes }) => String(minutes)),
    },
    { name: names.medicine!, role: 'medication', cell: of('medicine', own) },
    { name: names.note!, role: 'note', cell: of('note', own) },
  ];
}

/** Rows told apart by a word, amounts in one shared column. */
export function sharedColumns(making: Making): Column[] {
  const { shape, words } = making;
  const kind = (word: string) => kindWord(shape.vocabulary, shape.language, word);
  const unit = unitSaid(making, isUnitWrong(shape));
  const inCell = shape.unitAt === 'cell';
  const unitOf = (note: TrueNote | undefined): string =>
    note?.amount !== undefined
      ? spelt(note.unit!, shape.language)
      : note?.minutes !== undefined
        ? spelt('min', shape.language)
        : '';
  const columns: Column[] = [
    {
      name: words.names.kind!,
      role: 'kind',
      cell: ({ reading, notes }) => kind(reading ? 'sensor' : (notes[0]?.word ?? 'note')),
    },
    {
      name: words.names.value!,
      role: 'value',
      cell: ({ reading, notes }) => {
        if (reading) return readingText(reading, shape, words) + unitBehind(reading, shape, inCell ? ` ${unit}` : '');
        const [note] = notes;
        const value = note?.amount ?? note?.minutes;
        if (value === undefined) return '';
        const text = note!.kind === 'fingerstick' ? glucoseText(value, shape) : amountText(value, shape);
        return text + (inCell ? ` ${unitOf(note)}` : '');
      },
    },
  ];
  if (shape.unitAt.startsWith('column'))
    columns.push({
      name: words.names.unit!,
      role: 'unit',
      cell: ({ reading, notes }) => (reading ? unit : unitOf(notes[0])),
    });
  columns.push({ name: words.names.note!, role: 'note', cell: ({ notes }) => notes[0]?.words.join(' ') ?? '' });
  return columns;
}
