import type { GridZone } from '../model/trust.ts';

type Line = readonly (readonly [finger: number, sensor: number])[];

/**
 * Borders of the consensus error grid for type 1 (Parkes 2000, Diabetes Care 23:1143-1148; Pfützner 2013, J Diabetes
 * Sci Technol 7:1275-1281), mg/dL. COORDINATES FROM MEMORY: to be checked against the paper before a claim of
 * conformity rests on them. The last segment of a line goes on.
 */
export const UPPER: readonly (readonly [GridZone, Line])[] = [
  [
    'E',
    [
      [0, 150],
      [35, 155],
      [50, 550],
    ],
  ],
  [
    'D',
    [
      [0, 100],
      [25, 100],
      [50, 125],
      [80, 215],
      [125, 550],
    ],
  ],
  [
    'C',
    [
      [0, 60],
      [30, 60],
      [50, 80],
      [70, 110],
      [260, 550],
    ],
  ],
  [
    'B',
    [
      [0, 50],
      [30, 50],
      [140, 170],
      [280, 380],
      [430, 550],
    ],
  ],
];

/** There is no lower zone E. */
export const LOWER: readonly (readonly [GridZone, Line])[] = [
  [
    'D',
    [
      [250, 0],
      [250, 40],
      [550, 150],
    ],
  ],
  [
    'C',
    [
      [120, 0],
      [120, 30],
      [260, 130],
      [550, 250],
    ],
  ],
  [
    'B',
    [
      [50, 0],
      [50, 30],
      [170, 145],
      [385, 300],
      [550, 450],
    ],
  ],
];

/** Zone of a pair, both in mg/dL. A pair on a line belongs to the zone nearer to agreement. */
export function gridZone(finger: number, sensor: number): GridZone {
  for (const [zone, line] of UPPER) if (sensor > heightOf(line, finger)) return zone;
  for (const [zone, line] of LOWER) if (finger > line[0]![0] && sensor < heightOf(line, finger)) return zone;
  return 'A';
}

/** The upright piece with which a lower line begins is never asked for: only fingers beyond it are. */
function heightOf(line: Line, finger: number): number {
  let k = 1;
  while (k < line.length - 1 && finger > line[k]![0]) k++;
  const [x0, y0] = line[k - 1]!;
  const [x1, y1] = line[k]!;
  return y0 + ((finger - x0) * (y1 - y0)) / (x1 - x0);
}
