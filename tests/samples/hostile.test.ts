import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { optionText } from '../../src/language/shown.ts';
import type { Input, Issue, Ledger } from '../../src/model/input.ts';
import { readers, readInputs } from '../../src/readers/index.ts';
import { buildTimeline } from '../../src/timeline/index.ts';
import { rowsAddUp, sampleData } from './stories.ts';

interface Expected {
  outcome: 'read' | 'refused';
  used?: number;
  setAside?: number;
  /** The option that settles it must be named. */
  option?: string;
  /** Id of the input kind without which the file cannot be read. */
  needs?: string;
}

const hostile = join(sampleData, 'hostile');
const expected = JSON.parse(readFileSync(join(hostile, 'expected.json'), 'utf8')) as Record<string, Expected>;

function outcome(inputs: Input[]): { refusals: Issue[]; total: Ledger; refused: boolean } {
  const files = readInputs(inputs, { today: '2026-07-01' });
  const { timeline, issues, total } = buildTimeline(files, {});
  const refusals = [...files.flatMap((file) => file.issues), ...issues].filter(({ level }) => level === 'refusal');
  expect(rowsAddUp(total)).toBe(true);
  // Refused without a reason would be a dead end for whoever sits in front of it.
  if (timeline === null) expect(refusals).not.toEqual([]);
  return { refusals, total, refused: timeline === null || refusals.length > 0 };
}

const fileOf = (name: string, text: string): Input => ({ name, bytes: new TextEncoder().encode(text) });
const good = Array.from({ length: 24 }, (_, i) => `2026-03-03 08:${String(i + 10)},${110 + i}`);
const table = (rows: string[]): string => ['When,Glucose (mg/dL),Remark', ...rows].join('\n');

describe('hostile files', () => {
  const readable = Object.entries(expected).filter(
    ([, { needs }]) => needs === undefined || readers.some(({ id }) => id.startsWith(needs)),
  );
  it.each(readable)('%s', (name, { outcome: what, used, setAside, option }) => {
    const { refusals, refused, total } = outcome([{ name, bytes: readFileSync(join(hostile, name)) }]);
    expect({ outcome: refused ? 'refused' : 'read', refusals: refused ? refusals.map((r) => r.code) : [] }).toEqual({
      outcome: what,
      refusals: what === 'refused' ? expect.anything() : [],
    });
    if (used !== undefined) expect(total).toMatchObject({ used, setAside });
    if (option)
      expect(refusals.some((issue) => issue.question && optionText(issue.question).includes(option))).toBe(true);
  });
});

describe('too large to keep', () => {
  it('a line of a million characters alone', () => {
    expect(outcome([fileOf('line.csv', 'a'.repeat(1_000_000))]).refused).toBe(true);
  });
  it('a remark of a million characters among good rows', () => {
    const rows = [...good.slice(0, 12), `${good[12]},${'x'.repeat(1_000_000)}`, ...good.slice(13)];
    expect(outcome([fileOf('remark.csv', table(rows))])).toMatchObject({ refused: false, total: { used: 24 } });
  });
  it('a row of a hundred thousand columns among good rows', () => {
    const rows = [...good.slice(0, 12), ','.repeat(100_000), ...good.slice(12)];
    expect(outcome([fileOf('columns.csv', table(rows))])).toMatchObject({
      refused: false,
      total: { used: 24, rows: 26 },
    });
  });
  it('a million quotes', () => {
    expect(outcome([fileOf('quotes.csv', '"'.repeat(1_000_001))]).refused).toBe(true);
  });
  it('nesting a hundred thousand deep', () => {
    expect(outcome([fileOf('deep.json', '['.repeat(100_000) + ']'.repeat(100_000))]).refused).toBe(true);
  });
  it('a number of a hundred thousand digits', () => {
    const rows = [...good.slice(0, 12), `2026-03-03 09:10,${'1'.repeat(100_000)}`, ...good.slice(12)];
    expect(outcome([fileOf('digits.csv', table(rows))])).toMatchObject({
      refused: false,
      total: { used: 24, setAside: 1 },
    });
  });
});

describe('anything at all', () => {
  it('bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), fc.constantFrom('x.csv', 'x.json', 'x.txt'), (bytes, name) => {
        outcome([{ name, bytes }]);
      }),
      { numRuns: 150 },
    );
  });
  it('a good table with any text in place of one cell or one line', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), fc.nat(23), fc.boolean(), (text, at, whole) => {
        const rows = good.map((row, i) => (i === at ? (whole ? text : `${row.split(',')[0]},${text}`) : row));
        outcome([fileOf('table.csv', table(rows))]);
      }),
      { numRuns: 150 },
    );
  });
  it('is read the same when it comes twice', () => {
    const input = fileOf('table.csv', table(good));
    const { total } = outcome([input, { ...input, name: 'copy.csv' }]);
    expect(total).toMatchObject({ used: 24, duplicate: 24 });
  });
});
