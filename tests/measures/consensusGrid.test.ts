import { expect, test } from 'vitest';
import { gridZone } from '../../src/measures/consensusGrid.ts';

/** Coordinates of Parkes 2000, Diabetes Care 23:1143-1148, and Pfützner 2013, J Diabetes Sci Technol 7:1275-1281, from memory. */
test.each([
  // finger, sensor on an upper line: the zone nearer to agreement, and the one a step away from it
  [30, 50, 'A', 'B'],
  [140, 170, 'A', 'B'],
  [85, 110, 'A', 'B'],
  [70, 110, 'B', 'C'],
  [165, 330, 'B', 'C'],
  [80, 215, 'C', 'D'],
  [0, 150, 'D', 'E'],
  [50, 550, 'D', 'E'],
] as const)(
  'a finger value of %i beside a sensor of %i lies in zone %s, and above it in %s',
  (finger, sensor, on, above) => {
    expect([gridZone(finger, sensor), gridZone(finger, sensor + 0.1)]).toEqual([on, above]);
  },
);

test.each([
  [170, 145, 'A', 'B'],
  [110, 87.5, 'A', 'B'],
  [260, 130, 'B', 'C'],
  [190, 80, 'B', 'C'],
  [400, 95, 'C', 'D'],
] as const)(
  'a finger value of %i beside a sensor of %i lies in zone %s, and below it in %s',
  (finger, sensor, on, below) => {
    expect([gridZone(finger, sensor), gridZone(finger, sensor - 0.1)]).toEqual([on, below]);
  },
);

test.each([
  [50, 10, 'A', 'B'],
  [120, 10, 'B', 'C'],
  [250, 10, 'C', 'D'],
] as const)(
  'up to a finger value of %i a sensor of %i lies in zone %s, beyond it in %s',
  (finger, sensor, on, beyond) => {
    expect([gridZone(finger, sensor), gridZone(finger + 0.1, sensor)]).toEqual([on, beyond]);
  },
);
