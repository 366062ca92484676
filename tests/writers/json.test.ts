import { expect, test } from 'vitest';
import type { Analysis } from '../../src/analyse.ts';
import { analysisJson } from '../../src/writers/json.ts';

/** As much of an analysis as the writer looks at. */
const analysis = (text: string): Analysis =>
  ({
    ok: true,
    schema: 3,
    issues: [{ code: text, actual: text }],
    timeline: {
      zone: null,
      readings: {
        count: 2,
        at: Float64Array.of(1000, 2000),
        mgdl: Float64Array.of(100.5, 63),
        limit: Uint8Array.of(0, 1),
      },
      notes: [{ text }],
    },
  }) as unknown as Analysis;

test('typed columns become arrays; the text ends with one line end and is the same each time', () => {
  const text = analysisJson(analysis('x')).join('');
  expect(JSON.parse(text).timeline.readings).toEqual({
    count: 2,
    atEpochMs: [1000, 2000],
    mgPerDl: [100.5, 63],
    limit: [0, 1],
  });
  expect(text).toMatch(/[^\n]\n$/);
  expect(analysisJson(analysis('x')).join('')).toBe(text);
});

test('single readings can be left out', () => {
  const { timeline } = JSON.parse(analysisJson(analysis('x'), { readings: false }).join(''));
  expect(timeline.readings).toEqual({ count: 2 });
  expect(timeline.notes).toEqual([{ text: 'x' }]);
});

test.each(['@', '"readings": "@"', '\\"readings\\": \\"@\\"', '$&$1', '\u2028\u0000', '</script>'])(
  '%j stays text',
  (text) => {
    const { issues, timeline } = JSON.parse(analysisJson(analysis(text)).join(''));
    expect([issues[0].actual, timeline.notes[0].text]).toEqual([text, text]);
    expect(timeline.readings.count).toBe(2);
  },
);
