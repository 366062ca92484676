import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { analyse } from '../src/analyse.ts';
import { issueLines } from '../src/cli/tell.ts';
import type { Settings } from '../src/model/settings.ts';
import { linesOf } from '../src/page/worker/said.ts';
import { teller } from '../src/papers/teller.ts';

const home = fileURLToPath(new URL('..', import.meta.url));
const hostile = join(home, 'sample-data/hostile');
const tell = teller(JSON.parse(readFileSync(join(home, 'templates/words/en.json'), 'utf8')));
const settings: Settings = { targets: 'adult', today: '2026-11-01', person: {} };
const input = (name: string) => ({ name, bytes: readFileSync(join(hostile, name)) });

test.each(readdirSync(hostile).filter((name) => !/\.md$/.test(name)))(
  '%s: no row is lost, and what is wrong has words',
  (name) => {
    const given = analyse([input(name)], settings, '1');
    const { rows, used, duplicate, setAside, notes, ignored } = given.ledger;
    expect(used + duplicate + setAside + notes + ignored).toBe(rows);
    const said = issueLines(tell, given.issues, Number.POSITIVE_INFINITY);
    expect(said.join('\n')).not.toMatch(/undefined|NaN|\[object/);
    if (given.ok) {
      expect(given.issues.some(({ level }) => level === 'refusal')).toBe(false);
      expect(given.timeline.readings.count).toBeGreaterThan(0);
    } else {
      expect(given.issues.some(({ level }) => level === 'refusal')).toBe(true);
    }
  },
);

const plain = (): Uint8Array => {
  const lines = ['Time,Sensor glucose (mg/dL)'];
  for (let i = 0; i < 14 * 288; i++) {
    const at = new Date(Date.UTC(2026, 2, 2) + i * 300_000).toISOString().slice(0, 16).replace('T', ' ');
    lines.push(`${at},${100 + (i % 50)}`);
  }
  return new TextEncoder().encode(`${lines.join('\n')}\n`);
};
const hashOf = (change: Partial<Settings> = {}, version = '1'): string => {
  const given = analyse([{ name: 'a.csv', bytes: plain() }], { ...settings, ...change }, version);
  if (!given.ok) throw new Error(JSON.stringify(given.issues));
  return given.hash;
};

test('the short hash stands for files, settings and version, and not for whose they are', () => {
  const hash = hashOf();
  expect(hash).toMatch(/^[0-9a-f]{12}$/);
  expect(hashOf()).toBe(hash);
  expect(hashOf({ person: { name: 'Ann' } })).toBe(hash);
  expect(hashOf({ targets: 'older' })).not.toBe(hash);
  expect(hashOf({}, '2')).not.toBe(hash);
});

/** So many rows of which none has a value that glucose can have. */
const impossible = (rows: number): Uint8Array =>
  new TextEncoder().encode(
    `Time,Sensor glucose (mg/dL)\n${Array.from({ length: rows }, (_, i) => `2026-03-02 ${String(Math.floor(i / 60)).padStart(2, '0')}:${String(i % 60).padStart(2, '0')},-5\n`).join('')}`,
  );

test.each([
  [1, 0],
  [5, 0],
  [6, 1],
  [20, 15],
  [21, 16],
  [22, 17],
  [900, 895],
])('of %i places of a kind those that are not shown are counted, none left out: %i more', (rows, more) => {
  const { issues } = analyse([{ name: 'a.csv', bytes: impossible(rows) }], settings, '1');
  const own = (text: string): string => text;
  const said = [issueLines(tell, issues), linesOf(tell, issues, own).map(({ text }) => text)];
  for (const lines of said) {
    expect(lines.filter((line) => line.includes('The value -5 '))).toHaveLength(Math.min(rows, 5));
    expect(lines.flatMap((line) => /and ([\d,]+) more of this kind/.exec(line)?.[1] ?? [])).toEqual(
      more === 0 ? [] : [String(more)],
    );
  }
  // Where all are listed, those that the reader itself did not tell one by one are.
  const whole = issueLines(tell, issues, Number.POSITIVE_INFINITY);
  const listed = whole.filter((line) => line.includes('The value -5 ')).length;
  const rest = Number(/and ([\d,]+) more of this kind/.exec(whole.join('\n'))?.[1] ?? 0);
  expect(listed + rest).toBe(rows);
});

test('of two files, the places of both are counted', () => {
  const inputs = ['a.csv', 'b.csv'].map((name, i) => ({ name, bytes: impossible(100 + i) }));
  expect(issueLines(tell, analyse(inputs, settings, '1').issues).join('\n')).toContain('and 196 more of this kind');
});

test('nothing to read is a refusal', () => {
  expect(analyse([], settings, '1')).toMatchObject({ ok: false, ledger: { rows: 0 } });
});
