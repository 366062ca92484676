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

/** The borders written down a second time, apart from the program; where two corners meet and half way between them. */
type Corner = [finger: number, sensor: number];
const upper: [above: string, ...Corner[]][] = [
  ['B', [0, 50], [30, 50], [140, 170], [280, 380], [430, 550]],
  ['C', [0, 60], [30, 60], [50, 80], [70, 110], [260, 550]],
  ['D', [0, 100], [25, 100], [50, 125], [80, 215], [125, 550]],
  ['E', [0, 150], [35, 155], [50, 550]],
];
const lower: [below: string, ...Corner[]][] = [
  ['B', [50, 30], [170, 145], [385, 300], [550, 450]],
  ['C', [120, 30], [260, 130], [550, 250]],
  ['D', [250, 40], [550, 150]],
];
const nearer = (zone: string) => String.fromCharCode(zone.charCodeAt(0) - 1);

/** Each corner and each middle of a border, with the zone beyond it. */
const along = (lines: typeof upper) =>
  lines.flatMap(([zone, ...corners]) =>
    corners.flatMap(([x, y], k, all) => {
      const [nextX, nextY] = all[k + 1] ?? [x, y];
      return [[x, y, zone] as const, [(x + nextX) / 2, (y + nextY) / 2, zone] as const];
    }),
  );

test.each(along(upper))('finger %d: above a sensor of %d zone %s begins', (finger, sensor, zone) => {
  expect([gridZone(finger, sensor - 0.03), gridZone(finger, sensor + 0.03)]).toEqual([nearer(zone), zone]);
});

test.each(along(lower))('finger %d: below a sensor of %d zone %s begins', (finger, sensor, zone) => {
  // The first corner of each stands on its upright piece, and a finger value on that belongs to the nearer zone.
  expect([gridZone(finger + 0.001, sensor + 0.03), gridZone(finger + 0.001, sensor - 0.03)]).toEqual([
    nearer(zone),
    zone,
  ]);
});
