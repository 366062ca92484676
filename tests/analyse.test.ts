import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { analyse } from '../src/analyse.ts';
import { issueLines } from '../src/cli/tell.ts';
import type { Settings } from '../src/model/settings.ts';
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

test('nothing to read is a refusal', () => {
  expect(analyse([], settings, '1')).toMatchObject({ ok: false, ledger: { rows: 0 } });
});
