import type { Choice } from '../model/input.ts';
import { comesOften } from './density.ts';
import type { FhirReading, GlucoseValue, Resource } from './fhir-reading.ts';

export type Placed = Pick<Resource, 'line' | 'row'>;

/** A value whose code leaves open what measured it. */
export interface Unsure {
  resource: Placed;
  wall: number;
  offset: number;
  value: GlucoseValue;
}

/** Sensor values under codes that meters share: readings when they come often enough, else finger sticks. */
export function settleUnsure(
  unsure: Unsure[],
  place: (resource: Placed, wall: number, offset: number, value: GlucoseValue) => void,
  reading: FhirReading,
  choices: Choice[],
): void {
  if (unsure.length === 0) return;
  const sensor = comesOften(unsure, choices);
  for (const { resource, wall, offset, value } of unsure) {
    if (sensor) place(resource, wall, offset, value);
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
