import type { ManifestRow } from '../model/clinic.ts';
import type { GlucoseUnit } from '../model/glucose.ts';
import { fitDelimiters } from '../readers/delimiter.ts';
import { decode } from '../readers/encoding.ts';
import { cellText, fieldCount, scanRecords } from '../readers/records.ts';
import { targetSets } from '../targets/index.ts';
import { isLocalDate } from '../time/calendar.ts';
import { isZone } from '../time/zone.ts';

/** Columns of a manifest; any but `person` may be missing, in any order. */
const MANIFEST_COLUMNS = ['person', 'code', 'name', 'targets', 'unit', 'zone', 'language', 'visit', 'a1c'] as const;
type Column = (typeof MANIFEST_COLUMNS)[number];

export type Manifest =
  | { ok: true; rows: ManifestRow[] }
  | { ok: false; problem: 'not-text' | 'header'; actual: string };

const COMMA = 0x2c;
const LONGEST = 80;

/**
 * Reads a manifest: delimited text whose first line names the columns. A cell that cannot be used is told with its line
 * and spoils its own row only; a file whose header is not understood is refused whole, as its rows may mean anything.
 */
export function readManifest(bytes: Uint8Array, languages: readonly string[]): Manifest {
  const decoded = decode(bytes);
  if ('notText' in decoded) return { ok: false, problem: 'not-text', actual: decoded.notText };
  const delimiter = fitDelimiters(decoded.bytes).fits[0]?.delimiter ?? COMMA;
  const records = scanRecords(decoded.bytes, delimiter);
  const names = Array.from({ length: records.count > 0 ? fieldCount(records, 0) : 0 }, (_, column) =>
    cellText(records, 0, column).toLowerCase(),
  );
  const unknown = names.find((name) => !(MANIFEST_COLUMNS as readonly string[]).includes(name));
  const twice = unknown ?? names.find((name, i) => names.indexOf(name) !== i);
  if (!names.includes('person') || twice !== undefined) {
    return { ok: false, problem: 'header', actual: (twice ?? names.join(', ')).slice(0, LONGEST) };
  }
  const rows: ManifestRow[] = [];
  for (let row = 1; row < records.count; row++) {
    const cells: Partial<Record<Column, string>> = {};
    names.forEach((name, column) => {
      const text = cellText(records, row, column);
      if (text !== '') cells[name as Column] = text;
    });
    if (Object.keys(cells).length > 0) rows.push(rowOf(cells, records.line[row]!, languages));
  }
  return { ok: true, rows };
}

function rowOf(cells: Partial<Record<Column, string>>, line: number, languages: readonly string[]): ManifestRow {
  const row: ManifestRow = { line, person: (cells.person ?? '').replaceAll('\\', '/').replace(/^\.\/|\/+$/g, '') };
  const wrong = (column: Column, actual: string): void => {
    row.wrong ??= { column, actual: actual.slice(0, LONGEST) };
  };
  if (row.person === '') wrong('person', '');
  for (const column of ['code', 'name'] as const) {
    const text = cells[column];
    if (text === undefined) continue;
    if (text.length > LONGEST) wrong(column, text);
    else row[column] = text;
  }
  const { targets, unit, zone, language, visit, a1c } = cells;
  if (targets !== undefined) {
    if (Object.hasOwn(targetSets, targets)) row.targets = targets as keyof typeof targetSets;
    else wrong('targets', targets);
  }
  if (unit !== undefined) {
    if (unit === 'mg/dL' || unit === 'mmol/L') row.unit = unit satisfies GlucoseUnit;
    else wrong('unit', unit);
  }
  if (zone !== undefined) {
    if (isZone(zone)) row.zone = zone;
    else wrong('zone', zone);
  }
  if (language !== undefined) {
    if (languages.includes(language)) row.language = language;
    else wrong('language', language);
  }
  if (visit !== undefined) {
    if (isLocalDate(visit)) row.visit = visit;
    else wrong('visit', visit);
  }
  if (a1c !== undefined) {
    const percent = Number(/^\d{1,2}(?:[.,]\d{1,2})?$/.test(a1c) ? a1c.replace(',', '.') : Number.NaN);
    // Outside this a laboratory would have called; 42 or 53 are mmol/mol under the wrong heading (our limits).
    if (percent >= 3 && percent <= 20) row.a1c = percent;
    else wrong('a1c', a1c);
  }
  return row;
}
