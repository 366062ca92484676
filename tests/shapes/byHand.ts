import type { Making } from './columns.ts';
import { spelt } from './numbers.ts';
import { isByHand } from './shape.ts';
import { free, type Line, type Sheet } from './table.ts';

const DAY = 86_400_000;
const WEEKDAYS = 'Sun Mon Tue Wed Thu Fri Sat'.split(' ');

/** A table as people set it by hand: the lines of a usual one, set anew. */
export function setByHand(sheet: Sheet, making: Making): Sheet {
  const { shape } = making;
  if (!isByHand(shape) || sheet.lines.length === 0) return sheet;
  if (shape.container === 'blanks') return { ...sheet, lines: blanks(sheet.lines) };
  if (shape.container === 'day-headings') return headings(sheet, making);
  if (shape.container === 'counted') return counted(sheet, making);
  if (shape.container === 'yearless') return { ...sheet, lines: sheet.lines.map(withoutYear(sheet)) };
  return sheet;
}

/** Columns set below their names, two blanks between. */
function blanks(lines: Line[]): Line[] {
  const rows = lines.filter(({ is }) => is !== 'free');
  const widths = rows[0]!.cells.map((_, c) => Math.max(...rows.map(({ cells }) => cells[c]!.length)));
  return lines.map((line) =>
    line.is === 'free'
      ? line
      : {
          ...line,
          raw: line.cells
            .map((cell, c) => cell.padEnd(widths[c]! + 2))
            .join('')
            .trimEnd(),
        },
  );
}

/** A date above the rows of each day, and clocks in the rows. */
function headings(sheet: Sheet, { shape, form, words }: Making): Sheet {
  let day = Number.NaN;
  const lines = sheet.lines.flatMap((line): Line[] => {
    if (line.is === 'head') return [{ ...line, cells: line.cells.slice(1) }];
    if (line.wall === undefined) return [line];
    const row = { ...line, cells: line.cells.slice(1) };
    const own = Math.floor(line.wall / DAY);
    if (own === day) return [row];
    day = own;
    const date = form.cells({ wall: day * DAY, offset: 0 }, words)[0]!;
    const weekday = shape.seed % 2 === 0 ? `${WEEKDAYS[new Date(day * DAY).getUTCDay()]} ` : '';
    return [free(`${weekday}${date}`), row];
  });
  return { ...sheet, columns: sheet.columns.slice(1), lines };
}

/** Minutes since the first row, which no line says. */
function counted(sheet: Sheet, { shape, words }: Making): Sheet {
  const first = sheet.lines.find(({ wall }) => wall !== undefined)!.wall!;
  const name = `${words.names.time} (${spelt('min', shape.language)})`;
  const lines = sheet.lines.map((line) => {
    if (line.is === 'head') return { ...line, cells: [name, ...line.cells.slice(1)] };
    return line.wall === undefined
      ? line
      : { ...line, cells: [String((line.wall - first) / 60_000), ...line.cells.slice(1)] };
  });
  return { ...sheet, lines };
}

const withoutYear =
  ({ columns }: Sheet) =>
  (line: Line): Line => {
    if (line.wall === undefined) return line;
    const year = new Date(line.wall).getUTCFullYear();
    const at = columns.findIndex(({ role }) => role === 'time' || role === 'date');
    const cells = line.cells.map((cell, c) => (c === at ? cell.replace(new RegExp(`[ /]?${year}`), '') : cell));
    return { ...line, cells };
  };

/** What somebody who knows such a file says of it. */
export function answerByHand(sheet: Sheet, field: string): object | undefined {
  const first = sheet.lines.find(({ wall }) => wall !== undefined)?.wall;
  if (first === undefined) return undefined;
  const iso = new Date(first).toISOString();
  if (field === 'start') return { start: iso.slice(0, 16).replace('T', ' ') };
  if (field === 'year') return { year: Number(iso.slice(0, 4)) };
  return undefined;
}
