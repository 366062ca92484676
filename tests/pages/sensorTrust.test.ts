import { expect, test } from 'vitest';
import { compose } from '../../src/compose.ts';
import type { Measured } from '../../src/model/measured.ts';
import type { Sensors } from '../../src/model/trust.ts';
import { pageAsText } from '../../src/writers/text.ts';
import { analysisOf, wordsOf } from '../support/story.ts';

test('a day of wear without readings is told as not known, never as one without lows', async () => {
  const analysis = await analysisOf('steady-fortnight');
  const day = (n: number, share: number) => ({ day: n, sensors: 1, share, mean: null, low: 0, inRange: 0 });
  const byDay = [day(1, 0.5), day(2, 0)];
  const sensors: Measured<Sensors> = { ok: true, n: 100, of: 'readings', value: { worn: [], byDay } };
  const report = compose({ ...analysis, measures: { ...analysis.measures, sensors } }, wordsOf(), {
    voice: 'clinic',
    paper: 'a4',
    part: 'further',
  });
  const text = pageAsText(report, 'sensor-trust').replaceAll('\u00a0', ' ');
  const rows = text.split('\n').filter((line) => /^\W*[12]\W+1\W/.test(line));
  expect(rows).toHaveLength(2);
  expect(rows[0]).toMatch(/50 ?%.*–.*0 ?%.*0 ?%/);
  expect(rows[1]).toMatch(/0 ?%.*–.*–.*–/);
});
