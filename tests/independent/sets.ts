import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { intake } from '../../src/analyse.ts';
import type { Settings } from '../../src/model/settings.ts';
import type { Timeline } from '../../src/model/timeline.ts';
import { readInputs } from '../../src/readers/index.ts';
import { MGDL_PER_MMOL } from '../../src/units.ts';

/**
 * `npx tsx tests/independent/sets.ts FOLDER`: reads every CSV file of a folder of open data sets, each alone, and tells what became
 * of its rows; where the folder's `reference.json` has figures of a file, worked out apart, they are compared. The figures are of
 * one reading each, population or sample as they are named there.
 */
const folder = process.argv[2];
if (!folder) throw new Error('which folder?');
const settings: Settings = { targets: 'adult', today: '2026-06-01', person: {} };

interface Reference {
  source_unit: string;
  n: number;
  first: string;
  last: string;
  mean: number;
  sd: number;
  min: number;
  max: number;
  quantiles: Record<string, number>;
  ranges: { count: Record<string, number> };
}
const known: Record<string, Reference | undefined> = existsSync(join(folder, 'reference.json'))
  ? JSON.parse(readFileSync(join(folder, 'reference.json'), 'utf8'))
  : {};

/** Last digit of the reference's own rounding. */
const TOLERANCE = 1e-6;

function compared(timeline: Timeline, reference: Reference): string[] {
  const { readings } = timeline;
  const mmol = reference.source_unit === 'mmol/L';
  const values = Array.from(readings.mgdl.subarray(0, readings.count), (value) =>
    mmol ? value / MGDL_PER_MMOL : value,
  ).sort((a, b) => a - b);
  const n = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  const sd = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (n - 1));
  const quantile = (percent: number): number => {
    const at = ((n - 1) * percent) / 100;
    const low = Math.floor(at);
    return values[low]! + (at - low) * ((values[low + 1] ?? values[low]!) - values[low]!);
  };
  const at = (i: number) =>
    new Date(Date.parse(timeline.days[readings.day[i]!]!.date) + readings.minute[i]! * 60_000).toISOString();
  const limits = mmol ? [3.0, 3.9, 10.0, 13.9] : [54, 70, 180, 250];
  const count = (from: number, to: number, withTop: boolean) =>
    values.filter((value) => value >= from && (withTop ? value <= to : value < to)).length;
  const [a, b, c, d] = limits as [number, number, number, number];
  const off: string[] = [];
  const same = (what: string, got: number | string, want: number | string | undefined): void => {
    if (want === undefined) return;
    const equal =
      typeof got === 'number' && typeof want === 'number'
        ? Math.abs(got - want) <= TOLERANCE * Math.max(1, Math.abs(want))
        : got === want;
    if (!equal) off.push(`${what} ${got}, reference ${want}`);
  };
  same('n', n, reference.n);
  same('first', at(0).slice(0, 16).replace('T', ' '), reference.first.slice(0, 16));
  same(
    'last',
    at(n - 1)
      .slice(0, 16)
      .replace('T', ' '),
    reference.last.slice(0, 16),
  );
  same('mean', mean, reference.mean);
  same('sd', sd, reference.sd);
  same('min', values[0]!, reference.min);
  same('max', values[n - 1]!, reference.max);
  for (const [percent, want] of Object.entries(reference.quantiles))
    same(`quantile ${percent}`, quantile(Number(percent)), want);
  const { very_low, low, in_range, high, very_high } = reference.ranges.count;
  same('very low', count(0, a, false), very_low);
  same('low', count(a, b, false), low);
  same('in range', count(b, c, true), in_range);
  same('high', values.filter((value) => value > c && value <= d).length, high);
  same('very high', values.filter((value) => value > d).length, very_high);
  return off;
}

for (const set of readdirSync(folder).sort()) {
  if (!/^\w+$/.test(set)) continue;
  for (const name of readdirSync(join(folder, set)).sort()) {
    if (!name.endsWith('.csv')) continue;
    const bytes = new Uint8Array(readFileSync(join(folder, set, name)));
    const input = { name, bytes };
    const read = intake([input], settings);
    const kinds = new Map<string, number>();
    for (const { notes } of readInputs([input], settings))
      for (const { kind } of notes) kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
    const { rows, used, notes, duplicate, setAside, ignored } = read.ledger;
    const issues = new Map<string, number>();
    for (const { code, level } of read.issues)
      if (level !== 'note' && code !== 'no-readings') issues.set(code, (issues.get(code) ?? 0) + 1);
    const reference = known[`${set}/${name}`];
    const off = reference && read.ok ? compared(read.timeline, reference) : undefined;
    console.log(
      [
        `${set}/${name}: ${rows} rows = ${used} used + ${duplicate} duplicate + ${setAside} set aside + ${notes} notes + ${ignored} ignored`,
        [...kinds].map(([kind, count]) => `${count} ${kind}`).join(', '),
        off ? (off.length === 0 ? 'equals the reference' : `DIFFERS: ${off.join('; ')}`) : '',
        [...issues].map(([code, count]) => `${code} ${count}`).join(', '),
      ]
        .filter((part) => part !== '')
        .join(' | '),
    );
  }
}
