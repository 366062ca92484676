import { MINUTE_MS, midnightOf } from '../../time/calendar.ts';
import { offsetText } from '../../time/offset.ts';
import { loinc, quantity, TZ_CODE } from './codes.ts';
import { type Entry, uuid } from './entries.ts';
import { type About, observation } from './observation.ts';

const MASS = {
  profile: 'cgm-sensor-reading-mass-per-volume',
  unit: 'mg/dL' as const,
  code: loinc('99504-3', 'Glucose [Mass/volume] in Interstitial fluid'),
};
const MOLES = {
  profile: 'cgm-sensor-reading-moles-per-volume',
  unit: 'mmol/L' as const,
  code: loinc('105272-9', 'Glucose [Moles/volume] in Interstitial fluid'),
};
const INTERPRETATION = 'http://terminology.hl7.org/CodeSystem/v3-ObservationInterpretation';
const ABSENT = 'http://terminology.hl7.org/CodeSystem/data-absent-reason';

/**
 * Every reading of the period in its native unit, in order of time. Without a zone there are none: a FHIR time needs an
 * offset, and one that nobody gave would be a lie.
 */
export function readingEntries(about: About): Entry[] {
  const { timeline } = about.analysis;
  const { readings, days, zone } = timeline;
  if (zone === null) return [];
  const entries: Entry[] = [];
  for (let i = 0; i < readings.count; i++) {
    const { profile, unit, code } = readings.unit[i] === 0 ? MASS : MOLES;
    const at = readings.at[i]!;
    const time = localTime(at, days[readings.day[i]!]!.date, readings.minute[i]!);
    const content = {
      effectiveDateTime: time,
      _effectiveDateTime: { extension: [{ url: TZ_CODE, valueCode: zone }] },
      ...value(readings.native[i]!, readings.limit[i]!, unit),
    };
    const id = uuid(about.seed, 'reading', at, readings.native[i]!, readings.limit[i]!);
    entries.push(observation(about, { id, profile, code, content }));
  }
  return entries;
}

/** A reading at the sensor's limit is a bound, never a plain number. */
function value(native: number, limit: number, unit: 'mg/dL' | 'mmol/L'): Record<string, unknown> {
  if (limit === 0) return { valueQuantity: quantity(native, unit) };
  const sign = limit < 0 ? '<' : '>';
  const interpretation = [{ coding: [{ system: INTERPRETATION, code: sign }] }];
  if (!Number.isNaN(native)) return { valueQuantity: quantity(native, unit, sign), interpretation };
  const code = limit < 0 ? 'negative-infinity' : 'positive-infinity';
  return { dataAbsentReason: { coding: [{ system: ABSENT, code }] }, interpretation };
}

/** `2026-03-29T02:15:00+02:00`: the wearer's clock, and how far it is from UTC. */
function localTime(at: number, date: string, minute: number): string {
  const seconds = Math.floor(at / 1000) % 60;
  const wall = midnightOf(date) + minute * MINUTE_MS + ((seconds + 60) % 60) * 1000;
  const offset = Math.round((wall - at) / MINUTE_MS) * MINUTE_MS;
  const clock = new Date(wall).toISOString().slice(0, 19);
  return `${clock}${offsetText(offset)}`;
}
