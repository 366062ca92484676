import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { home, listed, plainExport, run, scratch } from './run.ts';

const odd = 'sample-data/hostile';

test('shows every choice, who made it, every row and every problem, and writes nothing', () => {
  const rows = plainExport().trimEnd().split('\n');
  rows.splice(10, 0, '2026-03-42 10:00,120');
  const folder = scratch({ 'a.csv': `${rows.join('\n')}\n` });
  const { exit, out, err } = run(folder, ['read', 'a.csv']);
  expect([exit, err]).toEqual([0, '']);
  expect(out).toMatch(/mg\/dL\s+the file shows it/);
  expect(out).toContain('a.csv:11: ');
  expect(out).toContain('--unit mg/dL');
  expect(out).toMatch(/4,322 rows = 4,320 readings .* 1 set aside \+ 1 not data/);
  expect(listed(folder)).toEqual(['a.csv']);
});

test('an option is offered once where the tables of a file agree, and not where they differ', () => {
  const tables = (unit: string, shown: (mgdl: number) => number) =>
    ['mg/dL', unit]
      .map((named, table) => {
        const rows = Array.from({ length: 96 }, (_, i) => {
          const clock = `${String(Math.floor(i / 4)).padStart(2, '0')}:${String((i % 4) * 15).padStart(2, '0')}`;
          return `2026-01-0${table + 1} ${clock},${table === 0 ? 90 + i : shown(90 + i)}`;
        });
        return [`Time,Glucose (${named})`, ...rows].join('\n');
      })
      .join('\n');
  const folder = scratch({
    'alike.csv': tables('mg/dL', (mgdl) => mgdl),
    'unlike.csv': tables('mmol/L', (mgdl) => Math.round((mgdl / 18.0156) * 10) / 10),
  });
  expect(run(folder, ['read', 'alike.csv']).out).toMatch(/^ {4}--unit mg\/dL$/m);
  const unlike = run(folder, ['read', 'unlike.csv']);
  expect([unlike.exit, unlike.out.includes('--unit')]).toEqual([0, false]);
});

test('what it could not read safely, it shows too, and ends with 1', () => {
  const { exit, out } = run(scratch(), ['read', join(home, odd, 'day-or-month.csv')]);
  expect(exit).toBe(1);
  expect(out).toContain('--date-order');
});

test('each column is shown with what it was taken for, and a short layout needs no file', () => {
  const rows = Array.from(
    { length: 40 },
    (_, i) => `2026-01-14 0${6 + Math.floor(i / 12)}:${String((i % 12) * 5).padStart(2, '0')},${120 + i},X`,
  );
  const folder = scratch({ 'a.csv': `Time,Glucose (mg/dL),Model\n${rows.join('\n')}\n` });
  const seen = run(folder, ['read', 'a.csv']);
  expect(seen.out).toMatch(/Model +not used +the same in every row: X/);
  const meant = run(folder, ['read', 'a.csv', '--json', '--layout', '{"meanings":{"Model":"note"}}']);
  expect(JSON.parse(meant.out).files[0].columns.at(-1)).toEqual({ name: 'Model', role: 'note', why: 'layout' });
  expect(run(folder, ['read', 'a.csv', '--layout', '{"meanings":']).exit).not.toBe(0);
});

describe('the layout it prints reads the file the same way, with nothing left to detect', () => {
  const stories = ['steady-fortnight', 'evening-exercise', 'autumn-clock-change'];
  const files = stories.flatMap((story) =>
    readdirSync(join(home, 'sample-data', story))
      .filter((name) => /\.(csv|tsv)$/.test(name))
      .map((name) => `${story}/${name}`),
  );
  test.each(files)('%s', (name) => {
    const folder = scratch({ 'settings.json': '{}' });
    const copy = join(folder, 'given.csv');
    writeFileSync(copy, readFileSync(join(home, 'sample-data', name)));
    const read = (...more: string[]) => JSON.parse(run(folder, ['read', copy, '--json', ...more]).out).files[0];
    const first = read();
    expect(first.layout).toBeDefined();
    writeFileSync(join(folder, 'found.layout.json'), JSON.stringify(first.layout));
    const again = read('--layout', 'found.layout.json');
    expect(again.ledger).toEqual(first.ledger);
    expect(again.layout).toEqual(first.layout);
    const detected = again.choices.filter(
      (choice: { id: string; by: string }) => choice.by === 'file' && ['delimiter', 'columns'].includes(choice.id),
    );
    expect(detected).toEqual([]);
  });
});

test('every odd file can be shown without a crash', () => {
  const folder = scratch();
  const { exit, out, err } = run(folder, ['read', join(home, odd), '--json']);
  expect(err).toBe('');
  expect([0, 1]).toContain(exit);
  const json = JSON.parse(out);
  expect(json.files.length).toBeGreaterThan(20);
  for (const { name, ledger } of json.files) {
    expect(ledger.used + ledger.duplicate + ledger.setAside + ledger.notes + ledger.ignored, name).toBe(ledger.rows);
  }
});

test('text in a file cannot move the cursor or turn the direction of a terminal', () => {
  const folder = scratch({
    'a.csv': `Time,Sensor glucose (mg/dL),\u001b[31mEvil\u202e\n${plainExport(1).split('\n').slice(1).join(',x\n')}`,
  });
  const { out, err } = run(folder, ['read', 'a.csv']);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: exactly these must not come out.
  expect(out + err).not.toMatch(/[\u001b\u202e]/);
});
