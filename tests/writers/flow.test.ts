import fc from 'fast-check';
import { expect, test } from 'vitest';
import { copyfit, place, type Strip } from '../../src/writers/pdf/flow.ts';

const strip = (height: number, over: Partial<Strip> = {}): Strip => ({
  height,
  gap: 0,
  keep: false,
  draw() {},
  ...over,
});
const sheetsOf = (strips: Strip[], capacity = 100): number[] =>
  place(strips, capacity).placed.map(({ sheet }) => sheet);

test.each<[string, Strip[], number[]]>([
  ['fills a sheet exactly', [strip(50), strip(50), strip(1)], [0, 0, 1]],
  ['counts the space between strips', [strip(50), strip(45, { gap: 6 })], [0, 1]],
  ['drops the space at the top of a sheet', [strip(60), strip(60, { gap: 20 }), strip(40)], [0, 1, 1]],
  ['moves a heading with what follows', [strip(80), strip(15, { keep: true }), strip(10)], [0, 1, 1]],
  ['moves a chain as one', [strip(50), strip(20, { keep: true }), strip(20, { keep: true }), strip(20)], [0, 1, 1, 1]],
  [
    'breaks a chain that no sheet could hold',
    [strip(60, { keep: true }), strip(60, { keep: true }), strip(60)],
    [0, 1, 2],
  ],
  ['starts a sheet when told to', [strip(10), strip(10, { breakBefore: true })], [0, 1]],
  ['starts no empty sheet', [strip(0, { breakBefore: true }), strip(10)], [0, 0]],
])('%s', (_, strips, expected) => {
  expect(sheetsOf(strips)).toEqual(expected);
});

test('a running head comes first on every sheet its rows run on to', () => {
  const head = strip(10, { keep: true });
  const row = strip(30, { running: head });
  const { placed } = place([head, row, row, row, row, row, row, row], 100);
  expect(placed.filter((it) => it.strip === head).map(({ sheet, y }) => [sheet, y])).toEqual([
    [0, 0],
    [1, 0],
    [2, 0],
  ]);
});

const anyStrip = fc
  .record({ height: fc.integer({ min: 0, max: 60 }), gap: fc.integer({ min: 0, max: 20 }), keep: fc.boolean() })
  .map((it) => strip(it.height, it));

test('whatever is placed: nothing lost, nothing out of order, nothing over the edge, nothing over another', () => {
  fc.assert(
    fc.property(fc.array(anyStrip, { maxLength: 40 }), (strips) => {
      const { placed, sheets } = place(strips, 100);
      expect(placed.map((it) => it.strip)).toEqual(strips);
      placed.forEach(({ strip: it, sheet, y }, i) => {
        expect(y + it.height).toBeLessThanOrEqual(100);
        expect(sheet).toBeLessThan(sheets);
        const before = placed[i - 1];
        if (!before) return;
        if (before.sheet === sheet) expect(y).toBe(before.y + before.strip.height + it.gap);
        else expect([sheet, y]).toEqual([before.sheet + 1, 0]);
      });
    }),
  );
});

test.each<[string, Strip[], number, number]>([
  ['leaves the space as wished where it spares nothing', [strip(50), strip(90, { gap: 20 })], 2, 0],
  ['tightens just enough to spare a sheet', [strip(50), strip(40, { gap: 13 })], 1, 50 + 13 * 0.7],
  ['does not tighten below half', [strip(50), strip(40, { gap: 30 })], 2, 0],
])('%s', (_, strips, sheets, y) => {
  const fitted = copyfit(strips, 100);
  expect(fitted.sheets).toBe(sheets);
  expect(fitted.placed.at(-1)!.y).toBeCloseTo(y, 9);
});

const lines = (n: number, height = 10): Strip[] => Array.from({ length: n }, () => strip(height));

test('a few lines are not left alone on a last sheet: it gets as many as make it look meant', () => {
  expect(copyfit(lines(11), 100).placed.map(({ sheet }) => sheet)).toEqual([...Array(8).fill(0), 1, 1, 1]);
  // A third and more is no remainder.
  expect(copyfit(lines(14), 100).placed.filter(({ sheet }) => sheet === 1)).toHaveLength(4);
});

test('a table goes over whole where what stays behind fills its sheet enough', () => {
  const head = strip(10, { keep: true });
  const rows = (n: number) => Array.from({ length: n }, () => strip(10, { running: head }));
  const { placed } = copyfit([...lines(4), head, ...rows(6)], 100);
  expect(placed.filter(({ sheet }) => sheet === 0)).toHaveLength(4);
  const { placed: cut } = copyfit([...lines(1), head, ...rows(9)], 100);
  expect(cut.filter(({ strip: it }) => it === head)).toHaveLength(2);
  expect(cut.filter(({ sheet }) => sheet === 1)).toHaveLength(3);
});
