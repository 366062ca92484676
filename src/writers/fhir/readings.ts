import type { About } from './about.ts';
import { loinc, quantity } from './codes.ts';
import { type Entry, uuid } from './entries.ts';
import { observation } from './observation.ts';
import { effective, localTime } from './when.ts';

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
 * Every reading of the period in its native unit, in order of time; each known by person, instant, value and unit, so that visits that
 * overlap and other goals send none twice. There are none where nobody placed the clock: a FHIR time needs an offset, and one that
 * nobody gave would be a lie.
 */
export function readingEntries(about: About): Entry[] {
  const { timeline } = about.analysis;
  const { readings } = timeline;
  if (!timeline.placed) return [];
  const entries: Entry[] = [];
  for (let i = 0; i < readings.count; i++) {
    const { profile, unit, code } = readings.unit[i] === 0 ? MASS : MOLES;
    const at = readings.at[i]!;
    const native = readings.native[i]!;
    const content = {
      ...effective(timeline, localTime(timeline, at, readings.day[i]!, readings.minute[i]!)),
      ...value(native, readings.limit[i]!, unit),
    };
    const id = uuid(about.person, 'reading', at, Number.isNaN(native) ? null : native, readings.limit[i]!, unit);
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
