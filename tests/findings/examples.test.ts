import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { findings } from '../../src/findings/index.ts';
import { targetSets } from '../../src/targets/index.ts';
import { onlyMeasured } from '../support/measures.ts';
import { examples } from './examples/index.ts';

/**
 * What each finding's examples hand to its sentence and where they point, one line each, so that a wrong count, band or
 * date shows as a changed line. `npm run golden` accepts; read the lines.
 */
test('what the examples tell', async () => {
  const lines = findings.flatMap(({ id, look }) =>
    examples[id].map(([name, given, , set = 'adult']) => {
      const { case: which, ...more } = look(onlyMeasured(given), targetSets[set]);
      return `${id} · ${name}: ${which} ${JSON.stringify(more)}`;
    }),
  );
  await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot('examples.txt');
});

/** Told wherever there are readings: what it says is a number, on whichever side of its goal. */
const ALWAYS_SAID = ['time-in-range'];

describe('the table of findings is whole', () => {
  const page = readFileSync(new URL('../../docs/findings.md', import.meta.url), 'utf8');
  const sections = new Map(
    page
      .split(/^## /m)
      .slice(1)
      .map((text) => [text.slice(0, text.indexOf('\n')), text]),
  );

  test('each has its condition, its source and its examples there', () => {
    expect([...sections.keys()]).toEqual(findings.map(({ id }) => id));
    for (const { id, source } of findings) {
      const text = sections.get(id)!;
      expect(text.split('\n')[2], id).toMatch(/^[A-Z0-9“].*\.$/);
      expect(text, id).toContain(`- source: ${source}`);
      for (const [name, , expected] of examples[id]) expect(text, id).toContain(`| ${name} | ${expected} |`);
    }
  });

  test('each has an example that just holds and one that just does not, and gives what they expect', () => {
    for (const { id, look } of findings) {
      const cases = examples[id].map(([name, given, expected, set = 'adult']) => {
        expect(look(onlyMeasured(given), targetSets[set]).case, `${id}: ${name}`).toBe(expected);
        return expected;
      });
      expect(cases, id).toContain('holds');
      if (!ALWAYS_SAID.includes(id)) expect(cases, id).toContain('absent');
    }
  });
});
