import { expect, test } from 'vitest';
import { standOut } from '../../src/stats/many.ts';

/** The 15 probabilities of the myocardial infarction trial in Benjamini & Hochberg 1995, section 3: the first four stand out at 0.05. */
const PRINTED = [
  0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.324, 0.4262, 0.5719, 0.6528, 0.759, 1,
];

test('the printed example', () => {
  const stands = standOut(
    PRINTED.map((p) => ({ p, least: 0 })),
    0.05,
  );
  expect(stands).toEqual(PRINTED.map((_, i) => i < 4));
});

test('comparisons too small ever to reach the level are not counted against the others (after Tarone 1990)', () => {
  const tiny = Array.from({ length: 20 }, () => ({ p: 1, least: 0.1 }));
  expect(standOut([{ p: 0.04, least: 0.001 }, ...tiny], 0.05)[0]).toBe(true);
  expect(standOut([{ p: 0.04, least: 0.001 }, ...tiny.map(() => ({ p: 1, least: 0.001 }))], 0.05)[0]).toBe(false);
});

test('nothing compared, nothing stands out', () => {
  expect(standOut([], 0.05)).toEqual([]);
});
