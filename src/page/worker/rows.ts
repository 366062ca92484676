import { utf8 } from '../../bytes/text.ts';
import type { Input } from '../../model/input.ts';
import { unpack } from '../../readers/containers/containers.ts';
import { decode } from '../../readers/table/encoding.ts';

/** So many signs of a file are looked at for what is shown of it, and so many of a cell. */
const LOOKED_AT = 400_000;
const LONGEST = 60;
/** Rows shown around a place, and different texts of a column. */
const AROUND = 2;
const SAMPLES = 4;

/** The text of a file as lines, as far as it is shown; none where it is no text. */
export function linesIn(inputs: readonly Input[], name: string): string[] {
  for (const input of inputs) {
    if (name !== input.name && !name.startsWith(`${input.name.replace(/\.gz$/i, '')}`)) continue;
    const found = unpack(input)
      .flatMap((one) => ('input' in one ? [one.input] : []))
      .find((one) => one.name === name);
    const text = found && decode(found.bytes.subarray(0, LOOKED_AT));
    if (text && 'bytes' in text) return utf8(text.bytes).split(/\r\n|\r|\n/);
  }
  return [];
}

/** The sign that parts a line into the most cells; only to show it. */
function partedBy(line: string): string {
  const counts = [',', ';', '\t', '|'].map((sign) => ({ sign, n: line.split(sign).length }));
  return counts.reduce((best, one) => (one.n > best.n ? one : best)).sign;
}

/** A line as cells, with quoted ones whole. */
export function cellsOf(line: string, sign: string): string[] {
  const cells: string[] = [];
  let cell = '';
  let quoted = false;
  for (const letter of line) {
    if (letter === '"') quoted = !quoted;
    else if (letter === sign && !quoted) {
      cells.push(cell);
      cell = '';
    } else cell += letter;
  }
  return [...cells, cell].map((text) => text.trim().slice(0, LONGEST));
}

/** The row that most likely names the columns: the first of the widest among the first. */
export function headOf(lines: readonly string[]): { at: number; sign: string } {
  const some = lines.slice(0, 40);
  const sign = partedBy(some.reduce((widest, line) => (line.length > widest.length ? line : widest), ''));
  const widths = some.map((line) => (line.trim() === '' ? 0 : cellsOf(line, sign).length));
  return { at: Math.max(0, widths.indexOf(Math.max(...widths, 0))), sign };
}

/** Rows of a file as they stand: its names, and those around a line (counted from 1); each begins with its number. */
export function rowsAround(lines: readonly string[], line: number): string[][] {
  if (lines.length === 0) return [];
  const { at, sign } = headOf(lines);
  const from = line > at + 1 ? Math.max(at + 1, line - AROUND) : at + 1;
  const shown = [at, ...Array.from({ length: AROUND + 2 }, (_, i) => from + i)];
  return [...new Set(shown)]
    .filter((i) => (lines[i] ?? '').trim() !== '')
    .map((i) => [String(i + 1), ...cellsOf(lines[i]!, sign)]);
}

/** Different texts of a column, told by its name or as `#3`. */
export function seenIn(lines: readonly string[], name: string): string {
  const { at, sign } = headOf(lines);
  const names = cellsOf(lines[at] ?? '', sign);
  const place = /^#(\d+)$/.exec(name);
  const index = place ? Number(place[1]) - 1 : names.indexOf(name.trim().slice(0, LONGEST));
  if (index < 0) return '';
  const seen = new Set<string>();
  for (const line of lines.slice(at + 1, at + 2000)) {
    const cell = cellsOf(line, sign)[index] ?? '';
    if (cell !== '') seen.add(cell);
    if (seen.size > SAMPLES) break;
  }
  const some = [...seen].slice(0, SAMPLES).join(' · ');
  return seen.size > SAMPLES ? `${some} …` : some;
}
