import { MGDL_PER_MMOL } from '../../src/units.ts';
import { clockAt } from './clockChange.ts';
import type { Making } from './columns.ts';
import { fhirRecords } from './fhirRecords.ts';
import { openMhealthRecords } from './openMhealthRecords.ts';
import type { Shape } from './shape.ts';
import { free, type Line, type Sheet } from './table.ts';
import type { TrueNote, TrueReading } from './truth.ts';

/** One record of an open format, and what of the truth stands in it. */
export interface OpenRecord {
  json: object;
  readings: TrueReading[];
  notes: TrueNote[];
  /** Must be set aside; absent: it is used, or says nothing that is looked for. */
  bad?: true;
}

/** Whether the rows are records of a published format. */
export const isOpenFormat = ({ container }: Pick<Shape, 'container'>): boolean =>
  container.startsWith('fhir') || container.startsWith('open-mhealth');

/** A time as RFC 3339 writes it, on the clock of the wall with its distance from world time. */
export function timeText({ truth }: Making, wall: number): string {
  const { wall: shown, offset } = clockAt(truth, wall);
  const two = (n: number): string => String(n).padStart(2, '0');
  const far = Math.abs(offset);
  return `${new Date(shown).toISOString().slice(0, 19)}${offset < 0 ? '-' : '+'}${two(Math.floor(far / 60))}:${two(far % 60)}`;
}

/** Every third reading in the other unit. */
function mixUnits({ truth, shape }: Making): void {
  if (shape.recordForm !== 'mixed-units') return;
  truth.readings.forEach((reading, k) => {
    if (k % 3 !== 1 || reading.limit !== 0) return;
    const other = reading.unit === 'mg/dL' ? 'mmol/L' : 'mg/dL';
    reading.native =
      other === 'mg/dL'
        ? Math.round(reading.native * MGDL_PER_MMOL)
        : Math.round((reading.native / MGDL_PER_MMOL) * 10) / 10;
    reading.unit = other;
  });
}

/** The records of a shape, one a line, so that a place is a line as in a table. */
export function recordSheet(making: Making): Sheet {
  const { shape, truth } = making;
  mixUnits(making);
  const fhir = shape.container.startsWith('fhir');
  const known = new Set<TrueNote['kind']>(
    fhir
      ? ['insulin', 'meal', 'exercise', 'fingerstick', 'medication', 'text']
      : ['insulin', 'exercise', 'fingerstick', 'medication'],
  );
  truth.notes = truth.notes.filter(({ kind }) => known.has(kind));
  const records = fhir ? fhirRecords(making) : openMhealthRecords(making);
  const ordered = shape.order === 'newest-first' ? records.reverse() : records;
  const lines = shape.container.endsWith('-lines');
  const body = ordered.map(({ json, readings, notes, bad }, k): Line => {
    const record = fhir && !lines ? { resource: json } : json;
    const comma = lines || k === ordered.length - 1 ? '' : ',';
    return { cells: [], raw: `${JSON.stringify(record)}${comma}`, is: bad ? 'bad' : 'data', readings, notes };
  });
  const around = (text: string): Line => ({ ...free(), raw: text });
  const first = fhir ? '{"resourceType": "Bundle", "type": "collection", "entry": [' : '[';
  const all = lines ? body : [around(first), ...body, around(fhir ? ']}' : ']')];
  return { name: 'log', lines: all, columns: [] };
}
