import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { findings } from '../src/findings/index.ts';
import { numberedRows } from './support/numberedRows.ts';

const home = fileURLToPath(new URL('..', import.meta.url));
const rows = numberedRows('docs/hazards.md');

/** The dangers that the list began with; each has to stay on it, in whatever words. */
const BEGAN_WITH = [
  /wrong unit/,
  /clock/,
  /gaps/i,
  /twice/,
  /words in place/i,
  /two people|wrong name/i,
  /averages hide/i,
  /thin data/,
  /wrong goals/i,
  /"no lows"/i,
  /rounding to zero/i,
  /coincidence/,
  /missing note/,
  /fingersticks are mixed/i,
  /between versions/,
];

test('the list holds what it began with, numbered without a gap', () => {
  const hazards = rows.map(([, hazard]) => hazard).join('\n');
  for (const hazard of BEGAN_WITH) expect(hazards).toMatch(hazard);
  expect(rows.map(([number]) => Number(number))).toEqual(rows.map((_, i) => i + 1));
});

describe('each hazard has something against it and a test that exists', () => {
  test.each(rows.map((row) => [`${row[0]} ${row[1]!.slice(0, 60)}`, row] as const))('%s', (_, row) => {
    const [, , against, file, title] = row as [string, string, string, string, string];
    expect(against.length).toBeGreaterThan(20);
    const path = `${home}${file.replaceAll('`', '')}`;
    expect(existsSync(path), path).toBe(true);
    // Tests of findings are named by the finding.
    const named = findings.some(({ id }) => id === title);
    const text = readFileSync(path, 'utf8').replace(/\\'/g, "'");
    const quoted = ["'", '"', '`'].some((mark) => text.includes(`${mark}${title}${mark}`));
    expect(named || quoted, title).toBe(true);
  });
});
