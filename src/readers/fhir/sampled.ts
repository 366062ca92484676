import { glucoseUnit, PLAUSIBLE } from '../glucose/unit.ts';
import { type Json, numberIn, objectIn, textIn } from '../json/fields.ts';
import type { FhirReading, Resource } from './reading.ts';

/** More points than this in one series are not unpacked (a year at one minute is 525 600). */
const MAX_POINTS = 1_000_000;

/**
 * Reads a SampledData series (FHIR R4): value = origin + number x factor, one every `period` ms from the start; `E` is
 * an error, `L` and `U` lie beyond the limits. One record, many readings.
 */
export function readSampled(
  reading: FhirReading,
  resource: Resource,
  sampled: Json,
  wall: number,
  offset: number,
): void {
  const origin = objectIn(sampled, 'origin');
  const zero = numberIn(origin, 'value');
  const unit = glucoseUnit(textIn(origin, 'code') || textIn(origin, 'unit'));
  const period = numberIn(sampled, 'period');
  const data = textIn(sampled, 'data')
    .split(/\s+/, MAX_POINTS)
    .filter((word) => word !== '');
  if (
    zero === undefined ||
    !unit ||
    !period ||
    period <= 0 ||
    numberIn(sampled, 'dimensions') !== 1 ||
    data.length === 0
  ) {
    reading.setAside(resource, unit ? 'series-unreadable' : 'value-unit-unknown', { actual: textIn(origin, 'unit') });
    return;
  }
  if (reading.unit && unit !== reading.unit) reading.coded ??= { unit, line: resource.line };
  const factor = numberIn(sampled, 'factor') ?? 1;
  const { low, high } = PLAUSIBLE[unit];
  let left = 0;
  data.forEach((word, i) => {
    const at = wall + i * period;
    if (word === 'L' || word === 'U') {
      const bound = numberIn(sampled, word === 'L' ? 'lowerLimit' : 'upperLimit');
      const value = bound === undefined ? Number.NaN : zero + bound * factor;
      reading.reading(resource, at, offset, { value, unit, limit: word === 'L' ? -1 : 1 }, false);
      return;
    }
    const value = /^-?\d+(?:\.\d+)?$/.test(word) ? zero + Number(word) * factor : Number.NaN;
    if (value >= low && value <= high) reading.reading(resource, at, offset, { value, unit, limit: 0 }, false);
    else left++;
  });
  if (left > 0) reading.remark('points-left-out', resource.line, left);
}
