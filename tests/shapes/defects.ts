import type { Chance } from '../../src/stats/chance.ts';
import type { Making } from './columns.ts';
import { glucoseText } from './numbers.ts';
import { pick } from './shape.ts';
import { free, headOf, type Line, type Sheet } from './table.ts';

/** What a defect asks of the reading. */
export interface Wanted {
  /** Must be refused, or read as the truth says; with the reason printed. */
  open?: string;
  /** Nobody can answer: a refusal is right, and ends it. */
  final?: true;
  /** Readings that may also come back with another number, or not at all but told. */
  loose?: Set<Line>;
}

type Defect = (sheet: Sheet, making: Making) => Wanted | undefined;

const dataOf = (sheet: Sheet): Line[] => sheet.lines.filter(({ is }) => is === 'data');
const onlyReading = (line: Line): boolean => line.readings.length === 1 && line.notes.length === 0;

/** A row with a reading and nothing else, well inside the table. */
function someRow(sheet: Sheet, next: Chance): Line {
  const rows = dataOf(sheet).filter((line) => onlyReading(line) && line.readings[0]!.limit === 0);
  return rows[Math.floor(rows.length * (0.2 + 0.6 * next()))]!;
}

const glucoseAt = (sheet: Sheet): number =>
  sheet.columns.findIndex(({ role }) => role === 'sensor' || role === 'value');
const timeAt = (sheet: Sheet): number => sheet.columns.findIndex(({ role }) => role === 'time' || role === 'date');

function spoil(line: Line, at: number, cell: string): void {
  line.cells[at] = cell;
  line.is = 'bad';
  line.readings = [];
}

/** A row whose glucose cell is replaced and must be set aside. */
const badValue =
  (cell: (making: Making) => string): Defect =>
  (sheet, making) => {
    for (let n = 0; n < 2; n++) spoil(someRow(sheet, making.next), glucoseAt(sheet), cell(making));
    return undefined;
  };

/** Rewrites every cell of data rows. */
const everyCell =
  (change: (cell: string, c: number, line: Line) => string, wanted?: Wanted): Defect =>
  (sheet) => {
    for (const line of dataOf(sheet)) line.cells = line.cells.map((cell, c) => change(cell, c, line));
    return wanted;
  };

function insert(sheet: Sheet, making: Making, ...lines: Line[]): void {
  const rows = dataOf(sheet);
  const at = sheet.lines.indexOf(rows[Math.floor(rows.length * (0.3 + 0.4 * making.next()))]!);
  sheet.lines.splice(at, 0, ...lines);
}

/** A date of another kind of row: the first row's date part by part. */
function odd(sheet: Sheet, making: Making, wall: number | string): undefined {
  const line = someRow(sheet, making.next);
  const columns = sheet.columns;
  const { form, words, truth } = making;
  const cells = typeof wall === 'number' ? form.cells({ wall, offset: truth.offset }, words) : undefined;
  let c = 0;
  columns.forEach(({ role }, i) => {
    if (i < timeAt(sheet) || c >= form.columns(words, { wall: 0, offset: 0 }).length) return;
    if (!['time', 'date', 'clock', 'offset', 'half'].includes(role)) return;
    if (cells) line.cells[i] = cells[c]!;
    else if (c === 0) line.cells[i] = wall as string;
    c++;
  });
  line.is = 'bad';
  line.readings = [];
  return undefined;
}

/** Swaps the first two numbers of a date. */
const swapped = (cell: string): string => cell.replace(/^(\d{1,2})([./-] ?)(\d{1,2})/, '$3$2$1');

export const DEFECTS: Record<string, Defect> = {
  none: () => undefined,
  'quoted-thousand': badValue(() => '1,200'),
  'odd-date': (sheet, making) => odd(sheet, making, '31.06.2026 08:15'),
  'blank-lines': (sheet, making) => {
    insert(sheet, making, free());
    insert(sheet, making, free(), free(...sheet.columns.map(() => '')));
    return undefined;
  },
  'cut-row': (sheet, making) => {
    const line = dataOf(sheet).filter(onlyReading).at(-1)!;
    line.cells = line.cells.slice(0, Math.max(1, timeAt(sheet) + 1));
    // A lone day number is no row of data.
    line.is = making.shape.time === 'two-serial' ? 'free' : 'bad';
    line.readings = [];
    // Cut short, it is the last line; what followed never came.
    sheet.lines = sheet.lines.filter(
      (one) => one.is !== 'data' || sheet.lines.indexOf(one) < sheet.lines.indexOf(line),
    );
    sheet.lines = sheet.lines.filter((one) => one !== line);
    sheet.lines.push(line);
    return undefined;
  },
  'mark-inside': (sheet) => {
    const head = sheet.lines.find(({ is }) => is === 'head');
    if (head) head.cells[0] = `\ufeff${head.cells[0]}`;
    return undefined;
  },
  'odd-decimal': (sheet, making) => {
    const line = someRow(sheet, making.next);
    const at = glucoseAt(sheet);
    const cell = line.cells[at]!;
    line.cells[at] = cell.includes(',') ? cell.replace(',', '.') : cell.replace('.', ',');
    return { loose: new Set([line]) };
  },
  'header-again': (sheet, making) => {
    insert(sheet, making, ...headOf(making, sheet.columns));
    return undefined;
  },
  'no-value-words': (sheet, making) => {
    for (const word of ['NaN', 'n/a', '---', '#N/A']) spoil(someRow(sheet, making.next), glucoseAt(sheet), word);
    return undefined;
  },
  zero: badValue(() => '0'),
  sentinel: badValue(({ next }) => pick(['-1', '9999', '65535'], next)),
  'value-turned-date': badValue(() => '05-Jun'),
  'clock-reset': (sheet, making) => odd(sheet, making, Date.UTC(1970, 0, 1, 0, 5)),
  future: (sheet, making) => odd(sheet, making, Date.UTC(2041, 2, 22, 9, 5)),
  'row-too-long': (sheet, making) => {
    const line = someRow(sheet, making.next);
    line.cells.push('7', '7');
    line.is = 'bad';
    line.readings = [];
    return undefined;
  },
  repeats: (sheet, making) => {
    const row = someRow(sheet, making.next);
    insert(sheet, making, { ...row, cells: [...row.cells], readings: [], is: 'free' });
    return undefined;
  },
  padded: everyCell((cell, c) => (cell === '' ? '' : c % 2 === 0 ? ` ${cell}  ` : `\u00a0${cell}`)),
  apostrophe: everyCell((cell) => (/^\d/.test(cell) ? `'${cell}` : cell)),
  'formula-text': everyCell((cell) => (/^\d+$/.test(cell) ? `="${cell}"` : cell)),
  'many-columns': (sheet) => {
    for (const line of sheet.lines) {
      if (line.is === 'data') line.cells.push(...Array.from({ length: 290 }, () => ''));
      if (line.is === 'head') line.cells.push(...Array.from({ length: 290 }, (_, k) => `X${k + 1}`));
    }
    return undefined;
  },
  'other-delimiter': (sheet, { shape }) => {
    const rows = dataOf(sheet);
    const other = shape.delimiter === ';' ? '\t' : ';';
    for (const line of rows.slice(Math.floor(rows.length * 0.6))) line.raw = line.cells.join(other);
    return undefined;
  },
  'unit-turns': (sheet, making) => {
    turnUnit(sheet, making, false);
    return { open: 'the unit changes half way and nothing names it' };
  },
  'unit-turns-named': (sheet, making) => {
    turnUnit(sheet, making, true);
    return undefined;
  },
  'order-turns': (sheet) => {
    const rows = dataOf(sheet);
    const at = timeAt(sheet);
    for (const line of rows.slice(Math.floor(rows.length / 2))) line.cells[at] = swapped(line.cells[at]!);
    return { open: 'the order of day and month changes half way', final: true };
  },
  'order-flipped': (sheet) => {
    const at = timeAt(sheet);
    for (const line of dataOf(sheet)) {
      const [, a, b] = /^(\d{1,2})[./-] ?(\d{1,2})/.exec(line.cells[at]!) ?? [];
      if (Number(a) <= 12 && Number(b) <= 12) line.cells[at] = swapped(line.cells[at]!);
    }
    return { open: 'days up to 12 are turned, the others are not', final: true };
  },
  'hours-to-24': everyCell(
    (cell, _, line) => {
      const clock = /^(|.*[^\d:])00:(\d\d)(:\d\d)?$/.exec(cell);
      if (!clock || line.wall === undefined || line.wall % 86_400_000 >= 3_600_000) return cell;
      return `${clock[1]}24:${clock[2]}${clock[3] ?? ''}`;
    },
    { open: 'hours are counted to 24', final: true },
  ),
  'half-lost': (sheet) => {
    const when = sheet.columns.map(({ role }) => ['time', 'date', 'clock'].includes(role));
    const lose = (cell: string, c: number) => (when[c] ? cell.replace(/ ?[AaPp]\.?[Mm]\.?$/, '') : cell);
    for (const line of dataOf(sheet)) line.cells = line.cells.map(lose);
    return { open: 'the hours run to 12 and nothing says the half', final: true };
  },
  'no-last-line-end': () => undefined,
  'comment-lines': (sheet, making) => {
    insert(sheet, making, free(`# ${making.words.names.title}`));
    return undefined;
  },
  'line-break': (sheet) => {
    const line = sheet.lines.find(({ notes }) => notes.some(({ kind }) => kind === 'text'));
    const note = line?.notes.find(({ kind }) => kind === 'text');
    if (!line || !note) return undefined;
    line.cells = line.cells.map((cell) => (cell === note.words[0] ? cell.replace(' ', '\n') : cell));
    return undefined;
  },
  contradiction: (sheet, making) => {
    const row = someRow(sheet, making.next);
    const other = row.readings[0]!.native * 1.3;
    const cells = [...row.cells];
    cells[glucoseAt(sheet)] = glucoseText(
      making.shape.unit === 'mg/dL' ? Math.round(other) : Math.round(other * 10) / 10,
      making.shape,
    );
    if (making.shape.unitAt === 'cell') cells[glucoseAt(sheet)] += ` ${making.shape.unit}`;
    insert(sheet, making, { ...row, cells, readings: [], is: 'bad' });
    row.is = 'bad';
    row.readings = [];
    return undefined;
  },
  'stray-quote': (sheet) => {
    const line = sheet.lines.find(({ notes }) => notes.some(({ kind }) => kind === 'text'));
    const note = line?.notes.find(({ kind }) => kind === 'text');
    if (line && note)
      line.cells = line.cells.map((cell) => (cell === note.words[0] ? cell.replace(' ', ' "so" ') : cell));
    return undefined;
  },
  'header-twice-named': (sheet) => {
    const head = sheet.lines.find(({ is }) => is === 'head');
    if (!head) return undefined;
    for (const line of sheet.lines) if (line.is !== 'free') line.cells.push('');
    head.cells[head.cells.length - 1] = head.cells[Math.max(0, glucoseAt(sheet))]!;
    return undefined;
  },
  'empty-column': (sheet) => {
    const units = sheet.lines[sheet.lines.findIndex(({ is }) => is === 'head') + 1];
    for (const line of sheet.lines)
      if (line.is !== 'free' || (line === units && line.cells.length === sheet.columns.length))
        line.cells.splice(1, 0, '');
    return undefined;
  },
  'sums-by-day': (sheet, making) => {
    const at = glucoseAt(sheet);
    insert(
      sheet,
      making,
      free(...sheet.columns.map((_, c) => (c === 0 ? making.words.names.average! : c === at ? '142' : ''))),
    );
    return undefined;
  },
};

/** From the middle on, numbers stand in the other unit; named: under a header of their own that says so. */
function turnUnit(sheet: Sheet, making: Making, named: boolean): void {
  const rows = dataOf(sheet);
  const later = rows.slice(Math.floor(rows.length / 2));
  const unit = making.shape.unit === 'mg/dL' ? 'mmol/L' : 'mg/dL';
  const at = glucoseAt(sheet);
  const other = (value: number) =>
    unit === 'mg/dL' ? Math.round(value * 18.0156) : Math.round((value / 18.0156) * 10) / 10;
  for (const line of later) {
    // A meter's value in the same column.
    const stick = making.shape.notes === 'kind-shared' && line.notes.find(({ kind }) => kind === 'fingerstick');
    if (stick) {
      stick.amount = other(stick.amount!);
      stick.unit = unit;
      line.cells[at] = glucoseText(stick.amount, { ...making.shape, unit, number: 'plain' });
    }
    for (const reading of line.readings) {
      reading.native = other(reading.native);
      reading.unit = unit;
      line.cells[at] = glucoseText(reading.native, { ...making.shape, unit, number: 'plain' });
    }
  }
  if (!named) return;
  const head = sheet.lines.find(({ is }) => is === 'head')!;
  const cells = head.cells.map((cell, c) => (c === at ? cell.replace(making.shape.unit, unit) : cell));
  sheet.lines.splice(sheet.lines.indexOf(later[0]!), 0, { ...head, cells });
}
