import type { Shape } from './shape.ts';
import type { Line, Sheet } from './table.ts';

/** A cell as JSON writes it: what is a number in the table is one here. */
const jsonOf = (cell: string): string | number => (/^-?(?:0|[1-9]\d*)(?:\.\d+)?$/.test(cell) ? Number(cell) : cell);

/**
 * The rows of a sheet as records, one a line: a list, the list of an object that says of all of them what stood above the table, or
 * one record a line. Cells that hold nothing are left out, null or empty, in turn.
 */
export function recordsText(sheet: Sheet, { container }: Shape, lineOf: Map<Line, number>): string {
  const at = sheet.lines.findIndex(({ is }) => is === 'head');
  const names = sheet.lines[at]!.cells;
  const rows = sheet.lines.filter(({ is }) => is === 'data' || is === 'bad' || is === 'free').slice();
  const above = sheet.lines.slice(0, at);
  const written = rows
    .filter((line) => !above.includes(line))
    .map((line, k) => {
      const fields = names.flatMap((name, c): [string, string | number | null][] => {
        const cell = line.cells[c] ?? '';
        if (cell !== '') return [[name, jsonOf(cell)]];
        return k % 3 === 0 ? [] : [[name, k % 3 === 1 ? null : '']];
      });
      return { line, text: JSON.stringify(Object.fromEntries(fields)) };
    });
  for (const line of sheet.lines) lineOf.set(line, 1);
  for (const [k, { line }] of written.entries()) lineOf.set(line, k + (container === 'record-lines' ? 1 : 2));
  const all = written.map(({ text }) => text);
  if (container === 'record-lines') return `${all.join('\n')}\n`;
  const list = `[\n${all.join(',\n')}\n]`;
  if (container === 'records') return `${list}\n`;
  const said = above
    .map(({ cells }) => /^([^:]+): (.+)$/.exec(cells.join(' ')))
    .flatMap((parts) => (parts ? [`${JSON.stringify(parts[1])}: ${JSON.stringify(parts[2])}, `] : []));
  return `{${said.join('')}"rows": ${list}}\n`;
}
