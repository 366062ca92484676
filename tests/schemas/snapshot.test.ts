import { expect, test } from 'vitest';
import { readSnapshot, snapshotText } from '../../src/schemas/snapshot.ts';
import { chance } from '../../src/stats/chance.ts';
import { simulated, WORLDS } from '../support/simulatedDays.ts';

const sums = simulated(WORLDS[1]!, 14, 0, '2026-01-01', chance(1));
const origin = { by: '0.1.0', hash: 'abc', on: '2026-01-20' };
const text = snapshotText(sums, origin);

test('what is written is read again, number for number', () => {
  expect(readSnapshot(text)).toEqual({ sums });
});

test('it holds dates and sums, and no name, note or file', () => {
  const keys = new Set<string>();
  JSON.parse(text, (key, value) => {
    if (!/^\d*$/.test(key)) keys.add(key);
    return value;
  });
  expect([...keys].sort()).toEqual(
    'bands by date days format hash highs interval known length lows made minutes on sensors squares sum targets unit version veryLows'
      .split(' ')
      .sort(),
  );
});

const changed = (change: (content: { days: object[] }) => void): string => {
  const content = JSON.parse(text);
  change(content);
  return JSON.stringify(content);
};

test.each<[string, string]>([
  ['no JSON', 'x'],
  ['another kind of file', '{"format": "something"}'],
  ['an earlier version than there was', changed((all) => Object.assign(all, { version: 0 }))],
  ['a name in it', changed((all) => Object.assign(all, { name: 'Marit' }))],
  ['no days', changed((all) => Object.assign(all, { days: [] }))],
  ['a day twice', changed((all) => all.days.push(all.days.at(-1)!))],
  ['minutes that do not add up', changed((all) => Object.assign(all.days[0]!, { minutes: 700 }))],
  ['squares that no values give', changed((all) => Object.assign(all.days[0]!, { squares: 1 }))],
  ['a number that is none', text.replace(/"sum":\d+\.?\d*/, '"sum":null')],
])('%s is refused with its place', (_, bad) => {
  const read = readSnapshot(bad);
  expect('problem' in read && read.problem.length).toBeGreaterThan(0);
});

test('a later version is told with both numbers, whatever else is in it', () => {
  const later = changed((all) => Object.assign(all, { version: 2, more: 'x', days: 'elsewhere' }));
  expect(readSnapshot(later)).toEqual({ newer: '2', known: '1' });
});
