import { JSDOM } from 'jsdom';
import { expect, test } from 'vitest';
import type { Drawing, Mark } from '../../src/model/drawing.ts';
import { hatchLines } from '../../src/writers/hatch.ts';
import { LEAST_LETTER, letterPlace, SIGNS } from '../../src/writers/signs.ts';
import { drawingSvg } from '../../src/writers/svg.ts';
import { ribbons, stack, strip } from './sample.ts';

const parse = (svg: string): Document => {
  const { window } = new JSDOM('');
  return new window.DOMParser().parseFromString(svg, 'image/svg+xml');
};
const drawing = (...marks: Mark[]): Drawing => ({ width: 100, height: 50, summary: 'A drawing.', marks });
const label = (text: string): Mark => ({ kind: 'text', role: 'ink', x: 1, y: 2, text, size: 9, anchor: 'middle' });

test('every drawing is well-formed, named, and has no id twice', () => {
  for (const it of [stack(), strip(1), ribbons()]) {
    for (const grey of [false, true]) {
      const page = parse(`<svg xmlns="http://www.w3.org/2000/svg">${drawingSvg(it, { grey, id: 'a' })}</svg>`);
      expect(page.querySelector('parsererror')).toBeNull();
      expect(page.querySelector('title')?.textContent).toBe(it.summary);
      const ids = [...page.querySelectorAll('[id]')].map((element) => element.id);
      expect(new Set(ids).size).toBe(ids.length);
      for (const id of ids) expect(id).toMatch(/^a-/);
    }
  }
});

test.each(['<b>&"\'', 'a\u0000b\u001b', '\uD800', ']]>', '<script>1</script>'])('text %j stays text', (text) => {
  const page = parse(drawingSvg({ ...drawing(label(text)), summary: text }));
  expect(page.querySelector('parsererror')).toBeNull();
  expect(page.querySelector('script, b')).toBeNull();
  const kept = text.replace(/[\p{Cc}\p{Cs}]/gu, '');
  expect(page.querySelector('text')?.textContent).toBe(kept);
});

test.each<[string, Mark]>([
  ['line', { kind: 'line', role: 'trace', lines: [[0, Number.NaN, 1, 1]], width: 1 }],
  ['rect', { kind: 'rect', role: 'low', x: 0, y: 0, w: Number.POSITIVE_INFINITY, h: 1 }],
  ['text', { kind: 'text', role: 'ink', x: Number.NaN, y: 0, text: 'a', size: 9, anchor: 'start' }],
])('a %s with a coordinate that is no number is refused', (_, mark) => {
  expect(() => drawingSvg(drawing(mark))).toThrow('not a number');
});

test('hatch lines lie a pitch apart, cross the whole box, and meet those of the shape beside it', () => {
  const hatch = { run: 'rising', width: 1, pitch: 4, colour: '#000000' } as const;
  const left = hatchLines({ x: 0, y: 0, w: 20, h: 10 }, hatch);
  const right = hatchLines({ x: 20, y: 0, w: 20, h: 10 }, hatch);
  const sums = (lines: number[][]): number[] => lines.map(([x0, y0]) => x0! + y0!);
  const all = [...sums(left), ...sums(right)].sort((a, b) => a - b);
  const step = 4 * Math.SQRT2;
  for (const sum of all) expect(Math.abs(sum / step - Math.round(sum / step))).toBeLessThan(1e-9);
  expect(sums(left)).toHaveLength(Math.floor(30 / step) + 1);
  for (const [x0, y0, x1, y1] of left) expect([y0, y1, x0! + y0!]).toEqual([0, 10, x1! + y1!]);
});

test.each(Object.keys(SIGNS) as (keyof typeof SIGNS)[])(
  '%s: its letter is readable, inside from 7.5 pt on, else beside',
  (shape) => {
    expect([letterPlace(shape, 8).inside, letterPlace(shape, 7).inside]).toEqual([true, false]);
    for (const size of [5, 7.5, 9, 20]) expect(letterPlace(shape, size).size).toBeGreaterThanOrEqual(LEAST_LETTER);
  },
);
