import { gzipSync } from 'node:zlib';
import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { MOST_LINES, tooLong } from '../../src/readers/bounds.ts';
import { readInputs } from '../../src/readers/index.ts';

const repeated = (text: string, length: number): Uint8Array => {
  const piece = new TextEncoder().encode(text);
  const bytes = new Uint8Array(length);
  for (let i = 0; i < length; i += piece.length) bytes.set(piece.subarray(0, Math.min(piece.length, length - i)), i);
  return bytes;
};
const table = new TextEncoder().encode('Time,Glucose (mg/dL)\n2026-01-14 08:00,100\n2026-01-14 08:05,101\n');

/** A table with something behind it; 50 MB of it took 4.6 GB to read. */
function behind(text: string, length = 50_000_000): Uint8Array {
  const bytes = new Uint8Array(table.length + length);
  bytes.set(table);
  bytes.set(repeated(text, length), table.length);
  return bytes;
}

describe('a file that would fill memory', () => {
  it.each([
    ['blank lines', 'a.csv', behind('\n')],
    ['blank lines of a typewriter', 'a.csv', behind('\r')],
    ['rows of nothing', 'a.csv', behind(',\n')],
    ['empty records, one a line', 'a.ndjson', repeated('{}\n', 50_000_000)],
    ['empty records in a list', 'a.json', repeated('{},', 130_000_000)],
  ])('of %s is refused with a word, before anything is kept of it', (_, name, bytes) => {
    const before = process.memoryUsage().rss;
    const [file] = readInputs([{ name, bytes }], { today: '2026-07-01' });
    expect(file!.issues).toEqual([{ code: 'too-many-lines', level: 'refusal', expected: MOST_LINES }]);
    expect(process.memoryUsage().rss - before).toBeLessThan(100_000_000);
  });

  it('and no other: ten years of readings every minute are read', () => {
    const row = '2026-01-14 08:00,100\n';
    expect(tooLong(repeated(row, row.length * 5_260_000))).toBe(false);
    expect(tooLong(repeated('\r\n', 2 * MOST_LINES))).toBe(false);
    expect(tooLong(repeated('\n', MOST_LINES + 1))).toBe(true);
  });
});

describe('what unpacks to such a file', () => {
  it.each([
    ['gzip', 'a.csv.gz', () => gzipSync(behind('\n', MOST_LINES), { level: 1 })],
    ['an archive', 'a.zip', () => zipSync({ 'a.csv': behind('\n', MOST_LINES) }, { level: 1 })],
  ])('%s is refused with the same word', (_, name, packed) => {
    const [file] = readInputs([{ name, bytes: packed() }], { today: '2026-07-01' });
    expect(file!.issues).toEqual([{ code: 'too-many-lines', level: 'refusal', expected: MOST_LINES }]);
  });
});

describe('rows of words', () => {
  // Each row may be a header: what its words mean is looked up once, and a header over and over is one.
  it.each([
    ['a header over and over', 'Time,Glucose (mg/dL)\n'],
    ['all marks that part columns', 'a;b,c|d\te\n'],
  ])('%s takes no minutes', { timeout: 30_000 }, (_, text) => {
    const [file] = readInputs([{ name: 'a.csv', bytes: repeated(text, 4_000_000) }], { today: '2026-07-01' });
    expect(file!.readings.count).toBe(0);
  });
});
