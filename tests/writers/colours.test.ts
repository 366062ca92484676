import { describe, expect, test } from 'vitest';
import type { Band } from '../../src/model/targets.ts';
import { COLOUR } from '../../src/writers/palette.ts';
import { ciede2000, difference, type Rgb, rgbOf, seenBy, type Viewer } from '../support/colour.ts';

/** Pairs and differences published with the formula (Sharma, Wu and Dalal 2005, table 1; from memory). */
test.each<[Rgb, Rgb, number]>([
  [[50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
  [[50, 3.1571, -77.2803], [50, 0, -82.7485], 2.8615],
  [[50, -1.3802, -84.2814], [50, 0, -82.7485], 1],
  [[50, 0, 0], [50, -1, 2], 2.3669],
  [[50, 2.5, 0], [50, 0, -2.5], 4.3065],
  [[60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.2644],
  [[2.0776, 0.0795, -1.135], [0.9033, -0.0636, -0.5514], 0.9082],
])('the measure itself: %j and %j differ by %d', (one, other, expected) => {
  expect(ciede2000(one, other)).toBeCloseTo(expected, 4);
});

const BANDS: readonly Band[] = ['very-low', 'low', 'in-range', 'high', 'very-high'];

/** Least difference of any two bands. A difference of 10 is seen at a glance (common practice, no source). */
describe('the five bands stay apart', () => {
  test.each<[Viewer | 'typical', number]>([
    ['typical', 20],
    ['protan', 18],
    ['deutan', 20],
    ['tritan', 20],
    // The darkest two come close on a grey copier: the cross-hatch of the very high band tells them apart.
    ['grey', 8],
  ])('%s: at least %d', (viewer, least) => {
    const seen = BANDS.map((band) => {
      const colour = rgbOf(COLOUR[band].fill);
      return viewer === 'typical' ? colour : seenBy(viewer, colour);
    });
    seen.forEach((one, i) => {
      for (const other of seen.slice(i + 1)) expect(difference(one, other)).toBeGreaterThanOrEqual(least);
    });
  });
});
