import type { Choice } from '../../model/input.ts';
import { comesOften } from '../glucose/density.ts';
import type { FhirReading } from './reading.ts';

/** Sensor values under codes that meters share: readings when they come often enough, else finger sticks. */
export function settleUnsure(reading: FhirReading, choices: Choice[]): void {
  const { unsure } = reading;
  if (unsure.length === 0) return;
  const sensor = comesOften(unsure, choices);
  for (const { resource, wall, offset, value } of unsure) {
    if (sensor) reading.reading(resource, wall, offset, value, false);
    else {
      const amount = Number.isNaN(value.value) || value.limit !== 0 ? {} : { amount: value.value };
      const origin = { file: reading.file, line: resource.line };
      reading.note({
        wall,
        offset,
        timed: true,
        kind: 'fingerstick',
        ...amount,
        unit: value.unit,
        origin,
        row: resource.row,
      });
    }
  }
}
