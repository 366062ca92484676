import { setByHand } from './byHand.ts';
import {
  type Column,
  decoyColumns,
  glucoseColumns,
  type Making,
  noteColumns,
  type Row,
  secondColumns,
  sharedColumns,
  timeColumns,
  unitSaid,
} from './columns.ts';
import { amountText } from './numbers.ts';
import { isOpenFormat, recordSheet } from './openRecords.ts';
import { personColumns, personLines } from './people.ts';
import { isTwoFiles } from './shape.ts';
import { zoneOf } from './timeForms.ts';
import type { TrueNote, TrueReading } from './truth.ts';

/** One line of a file, with what of the truth stands in it. */
export interface Line {
  cells: string[];
  /** free: no data. bad: must be set aside. */
  is: 'free' | 'data' | 'bad' | 'head';
  readings: TrueReading[];
  notes: TrueNote[];
  wall?: number;
  /** Written as it is, whatever the delimiter. */
  raw?: string;
}

export interface Sheet {
  name: string;
  lines: Line[];
  columns: Column[];
}

export const free = (...cells: string[]): Line => ({ cells, is: 'free', readings: [], notes: [] });

function clockColumns(making: Making): Column[] {
  const { shape, words, truth, form } = making;
  const at = (ms: number) =>
    new Date(ms)
      .toISOString()
      .slice(0, form.seconds ? 19 : 16)
      .replace('T', ' ');
  if (shape.secondClock === 'utc')
    return [{ name: `${words.names.time} (UTC)`, role: 'world', cell: ({ wall }) => at(wall - truth.offset * 60_000) }];
  if (shape.secondClock === 'uploaded')
    return [{ name: words.names.uploaded!, role: 'ignore', cell: ({ wall }) => at(wall + 9 * 3_600_000 + 120_000) }];
  if (shape.secondClock === 'nameless')
    return [{ name: 'T2', role: 'ignore', cell: ({ wall }) => at(wall + 3 * 3_600_000) }];
  if (shape.secondClock === 'serial') return [{ name: '#', role: 'ignore', cell: (_, k) => String(k + 1) }];
  return [];
}

/** Readings and notes as rows, one a moment; where kinds are told apart by a word, one an entry. */
function rowsOf({ shape, truth }: Making, notes: TrueNote[], readings: TrueReading[]): Row[] {
  const rows: Row[] = readings.map((reading) => ({ wall: reading.wall, reading, notes: [] }));
  const ownRows = shape.notes.startsWith('kind-');
  const byWall = new Map(rows.map((row) => [row.wall, row]));
  for (const note of notes) {
    const row = ownRows ? undefined : byWall.get(note.wall);
    if (row) row.notes.push(note);
    else {
      const own: Row = { wall: note.wall, notes: [note] };
      rows.push(own);
      if (!ownRows) byWall.set(note.wall, own);
    }
  }
  rows.sort((a, b) => a.wall - b.wall);
  return shape.order === 'newest-first' && truth.readings.length > 0 ? rows.reverse() : rows;
}

function lineOf(columns: Column[], row: Row, k: number): Line {
  return {
    cells: columns.map(({ cell }) => cell(row, k)),
    is: 'data',
    readings: row.reading ? [row.reading] : [],
    notes: row.notes,
    wall: row.wall,
  };
}

export function headOf({ shape }: Making, columns: Column[]): Line[] {
  if (shape.header === 'absent') return [];
  const upper = (name: string) => (shape.header === 'capitals' ? name.toLocaleUpperCase(shape.language) : name);
  const names: Line = { ...free(...columns.map(({ name }) => upper(name))), is: 'head' };
  if (!columns.some(({ unitBelow }) => unitBelow)) return [names];
  return [
    names,
    free(
      ...columns.map(({ unitBelow, unit }) => unitBelow ?? (unit && unit !== 'mg/dL' && unit !== 'mmol/L' ? unit : '')),
    ),
  ];
}

function above(making: Making, other = false): Line[] {
  const { shape, words, truth } = making;
  const { names } = words;
  const lines: Line[] = [];
  const day = (ms: number) => new Date(ms).toISOString().slice(0, 10);
  if (shape.preamble === 'sep') lines.push({ ...free(), raw: `sep=${shape.delimiter}` });
  if (['title', 'title-blank', 'long'].includes(shape.preamble)) lines.push(free(names.title!));
  if (shape.preamble === 'title-blank') lines.push(free());
  lines.push(...personLines(making, other).map((cells) => free(...cells)));
  if (shape.unitAt === 'preamble' || shape.unitAt === 'preamble-wrong')
    lines.push(free(`${names.unit}: ${unitSaid(making, shape.unitAt === 'preamble-wrong')}`));
  if (shape.preamble === 'dates' || shape.preamble === 'long')
    lines.push(free(names.date!, day(truth.readings[0]!.wall), day(truth.readings.at(-1)!.wall)));
  if (shape.preamble === 'long')
    lines.push(free('1', '2', '3'), free(`${names.total}: ${truth.readings.length}`), free('---'), free());
  return lines;
}

function below({ shape, words, truth }: Making, columns: Column[]): Line[] {
  const { names } = words;
  const mean = truth.readings.reduce((sum, { native }) => sum + native, 0) / truth.readings.length;
  const text = amountText(Number(mean.toFixed(shape.unit === 'mg/dL' ? 0 : 1)), shape);
  const at = columns.findIndex(({ role }) => role === 'sensor' || role === 'value');
  const put = (first: string): string[] => columns.map((_, c) => (c === 0 ? first : c === at ? text : ''));
  if (shape.footer === 'sum') return [free(names.total!, String(truth.readings.length))];
  if (shape.footer === 'mean') return [free(...put(names.average!))];
  if (shape.footer === 'words') return [free(), free(`${names.title} – 2/2`)];
  if (shape.footer === 'blank') return [free(), free(...columns.map(() => '')), free()];
  if (shape.footer === 'mean-by-day')
    return [0, 1].map((day) =>
      free(
        ...put(`${names.average} ${new Date(truth.readings[0]!.wall + day * 86_400_000).toISOString().slice(0, 10)}`),
      ),
    );
  return [];
}

const STICKS = (note: TrueNote) => note.kind === 'fingerstick';

/** The sheets of a shape, before anything goes wrong in them. */
export function sheetsOf(making: Making): Sheet[] {
  const { shape, truth, next } = making;
  if (shape.container === 'wide') return [wideSheet(making), ...notesApart(making)];
  if (shape.container === 'days-across') return [acrossSheet(making)];
  if (isOpenFormat(shape)) return [recordSheet(making)];
  const times = [...timeColumns(making), ...clockColumns(making)];
  if (shape.secondClock === 'serial' || (shape.secondClock !== 'none' && next() < 0.3)) times.unshift(times.pop()!);
  const shared = shape.notes === 'kind-shared';
  const elsewhere = shape.notes === 'second-table' || shape.notes === 'own-file' || shape.notes === 'none';
  const kinds = shape.notes === 'kind-own' ? sharedColumns(making).slice(0, 1) : [];
  const glucose = shared ? [] : [...glucoseColumns(making), ...secondColumns(making)];
  const decoys = decoyColumns(making);
  const notes = shared ? sharedColumns(making) : elsewhere ? [] : noteColumns(making);
  const main = shared ? notes : glucose;
  const columns = [
    ...times,
    ...kinds,
    ...(shape.decoyAt === 'before' ? [...decoys, ...main] : [...main, ...decoys]),
    ...(shared ? [] : notes),
    ...personColumns(making),
  ];
  const here = elsewhere ? truth.notes.filter(STICKS) : truth.notes;
  const rows = rowsOf(making, here, truth.readings);
  const lines = [...above(making), ...headOf(making, columns), ...rows.map((row, k) => lineOf(columns, row, k))];
  if (shape.notes === 'second-table') lines.push(free(), ...notesLines(making));
  lines.push(...below(making, columns));
  const sheet: Sheet = setByHand({ name: 'log', lines, columns }, making);
  if (isTwoFiles(shape)) return parted(sheet, making, true);
  const all = shape.container === 'two-files' ? parted(sheet, making, false) : [sheet];
  return shape.notes === 'own-file' ? [...all, ...notesApart(making)] : all;
}

function notesLines(making: Making): Line[] {
  const columns = [...timeColumns(making), ...noteColumns(making)];
  const notes = making.truth.notes.filter((note) => !STICKS(note));
  const named: Making = { ...making, shape: { ...making.shape, header: 'plain' } };
  return [...headOf(named, columns), ...rowsOf(making, notes, []).map((row, k) => lineOf(columns, row, k))];
}

function notesApart(making: Making): Sheet[] {
  if (making.shape.notes !== 'own-file') return [];
  const columns = [...timeColumns(making), ...noteColumns(making)];
  return [{ name: 'notes', lines: notesLines(making), columns }];
}

/** The same head over both halves. */
function parted(sheet: Sheet, making: Making, people: boolean): Sheet[] {
  const data = sheet.lines.filter(({ is }) => is === 'data');
  const half = Math.floor(data.length / 2);
  const head = (other: boolean) => [
    ...above(making, other && people),
    ...sheet.lines.filter(({ is }) => is === 'head').map(copy),
  ];
  const copy = (line: Line): Line => ({ ...line, cells: [...line.cells] });
  const units = sheet.lines[sheet.lines.findIndex(({ is }) => is === 'head') + 1];
  const more = making.shape.unitAt === 'row' && units?.is === 'free' ? [units] : [];
  return [data.slice(0, half), data.slice(half)].map((lines, i) => ({
    ...sheet,
    name: `log-${i + 1}`,
    lines: [...head(i === 1), ...more.map(copy), ...lines],
  }));
}

/** One row a day, one column a clock time. */
function wideSheet(making: Making): Sheet {
  const { shape, words, truth, form } = making;
  const [column] = glucoseColumns({ ...making, shape: { ...shape, unitAt: 'header' } });
  const minutes = [...new Set(truth.readings.map(({ wall }) => wall % 86_400_000))].sort((a, b) => a - b);
  const clock = (ms: number) => new Date(ms).toISOString().slice(11, 16);
  const days = [...new Set(truth.readings.map(({ wall }) => Math.floor(wall / 86_400_000)))];
  const byWall = new Map(truth.readings.map((reading) => [reading.wall, reading]));
  const lines: Line[] = days.map((day) => {
    const readings = minutes.map((minute) => byWall.get(day * 86_400_000 + minute));
    return {
      cells: [
        form.cells({ wall: day * 86_400_000, offset: 0 }, words)[0]!,
        ...readings.map((reading) => (reading ? column!.cell({ wall: reading.wall, reading, notes: [] }, 0) : '')),
      ],
      is: 'data',
      readings: readings.filter((reading) => reading !== undefined),
      notes: [],
    };
  });
  const head: Line = { ...free(words.names.date!, ...minutes.map(clock)), is: 'head' };
  return { name: 'log', lines: [...above(making), free(column!.name), head, ...lines], columns: [] };
}

/** One column a day, one row a clock time. */
function acrossSheet(making: Making): Sheet {
  const { words, truth, form } = making;
  const [column] = glucoseColumns({ ...making, shape: { ...making.shape, unitAt: 'header' } });
  const minutes = [...new Set(truth.readings.map(({ wall }) => wall % 86_400_000))].sort((a, b) => a - b);
  const days = [...new Set(truth.readings.map(({ wall }) => Math.floor(wall / 86_400_000)))];
  const byWall = new Map(truth.readings.map((reading) => [reading.wall, reading]));
  const date = (day: number) => form.cells({ wall: day * 86_400_000, offset: 0 }, words)[0]!;
  const lines = minutes.map((minute): Line => {
    const readings = days.map((day) => byWall.get(day * 86_400_000 + minute));
    const cell = (reading: TrueReading | undefined) =>
      reading ? column!.cell({ wall: reading.wall, reading, notes: [] }, 0) : '';
    return {
      cells: [new Date(minute).toISOString().slice(11, form.seconds ? 19 : 16), ...readings.map(cell)],
      is: 'data',
      readings: readings.filter((reading) => reading !== undefined),
      notes: [],
    };
  });
  const head: Line = { ...free(words.names.clock!, ...days.map(date)), is: 'head' };
  return { name: 'log', lines: [...above(making), free(column!.name), head, ...lines], columns: [] };
}

export const zoneNamed = ({ truth }: Making): string => zoneOf(truth.offset);
