import { LANGUAGES } from '../language/index.ts';
import type { ManifestRow } from '../model/clinic.ts';
import { fitDelimiters } from '../readers/table/delimiter.ts';
import { decode } from '../readers/table/encoding.ts';
import { cellText, fieldCount, scanRecords } from '../readers/table/records.ts';
import { manifestRow } from '../schemas/manifestRow.ts';
import { targetSets } from '../targets/index.ts';
import { isLocalDate } from '../time/calendar.ts';
import { isZone } from '../time/zone.ts';

/** Columns of a manifest; any but `person` may be missing, in any order. */
const MANIFEST_COLUMNS: readonly string[] = Object.keys(manifestRow.shape);
type Column = keyof typeof manifestRow.shape;

/** Its rows, or what it holds in place of a first line that can be understood. */
export type Manifest = { ok: true; rows: ManifestRow[] } | { ok: false; actual: string };

const COMMA = 0x2c;
const LONGEST = 80;

/**
 * Reads a manifest: delimited text whose first line names the columns. A cell that cannot be used is told with its line
 * and spoils its own row only; a file whose header is not understood is refused whole, as its rows may mean anything.
 */
export function readManifest(bytes: Uint8Array): Manifest {
  const decoded = decode(bytes);
  if ('notText' in decoded) return { ok: false, actual: decoded.notText };
  const delimiter = fitDelimiters(decoded.bytes).fits[0]?.delimiter ?? COMMA;
  const records = scanRecords(decoded.bytes, delimiter);
  const names = Array.from({ length: records.count > 0 ? fieldCount(records, 0) : 0 }, (_, column) =>
    cellText(records, 0, column).toLowerCase(),
  );
  const unknown = names.find((name) => !MANIFEST_COLUMNS.includes(name));
  const odd = unknown ?? names.find((name, i) => names.indexOf(name) !== i);
  if (!names.includes('person') || odd !== undefined) {
    return { ok: false, actual: (odd ?? names.join(', ')).slice(0, LONGEST) };
  }
  const rows: ManifestRow[] = [];
  for (let row = 1; row < records.count; row++) {
    const cells: Partial<Record<Column, string>> = {};
    names.forEach((name, column) => {
      const text = cellText(records, row, column);
      if (text !== '') cells[name as Column] = text;
    });
    if (Object.keys(cells).length > 0) rows.push(rowOf(cells, records.line[row]!));
  }
  return { ok: true, rows };
}

function rowOf(cells: Partial<Record<Column, string>>, line: number): ManifestRow {
  const row: ManifestRow = { line, person: (cells.person ?? '').replaceAll('\\', '/').replace(/^\.\/|\/+$/g, '') };
  const wrong = (column: Column, actual: string): void => {
    row.wrong ??= { column, actual: actual.slice(0, LONGEST) };
  };
  /** Takes a cell as it is meant; what cannot be meant spoils the row. */
  const take = <K extends Exclude<Column, 'person'>>(
    column: K,
    meant: (text: string) => ManifestRow[K] | undefined,
  ): void => {
    const text = cells[column];
    if (text === undefined) return;
    const value = meant(text);
    if (value === undefined) wrong(column, text);
    else row[column] = value;
  };
  const short = (text: string): string | undefined => (text.length > LONGEST ? undefined : text);
  if (row.person === '') wrong('person', '');
  take('code', short);
  take('name', short);
  take('targets', (id) => (Object.hasOwn(targetSets, id) ? (id as keyof typeof targetSets) : undefined));
  take('unit', (unit) => (unit === 'mg/dL' || unit === 'mmol/L' ? unit : undefined));
  take('zone', (zone) => (isZone(zone) ? zone : undefined));
  take('language', (one) => LANGUAGES.find((language) => language === one));
  take('visit', (text) => {
    const [, date = '', time] = /^(\S+?)(?:[ T]+((?:[01]\d|2[0-3]):[0-5]\d))?$/.exec(text) ?? [];
    if (!isLocalDate(date)) return undefined;
    if (time !== undefined) row.time = time;
    return date;
  });
  take('a1c', percent);
  return row;
}

/** Outside 3 to 20 a laboratory would have called; 42 or 53 are mmol/mol under the wrong heading (our limits). */
function percent(text: string): number | undefined {
  const value = Number(/^\d{1,2}(?:[.,]\d{1,2})?$/.test(text) ? text.replace(',', '.') : Number.NaN);
  return value >= 3 && value <= 20 ? value : undefined;
}
