import { execFileSync } from 'node:child_process';
import { chmodSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { home, listed, plainExport, run, scratch } from './run.ts';

const story = join(home, 'sample-data/steady-fortnight');
const OUT = [
  'HL-104-analysis.json',
  'HL-104-clinic-report.pdf',
  'HL-104-interpretation.txt',
  'HL-104-patient-paper.pdf',
];

describe('a sample story', () => {
  test('gives both papers and the numbers, and says where they are', () => {
    const folder = scratch();
    const { exit, out, err } = run(folder, ['report', story, '--out', 'results']);
    expect(err).toBe('');
    expect(exit).toBe(0);
    const papers = listed(join(folder, 'results'));
    expect(papers).toEqual(expect.arrayContaining(OUT));
    for (const name of papers) expect(out).toContain(name);
    for (const name of papers.filter((each) => each.endsWith('.pdf'))) {
      const pdf = readFileSync(join(folder, 'results', name));
      expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
      expect(pdf.subarray(-6).toString()).toContain('EOF');
    }
  });

  test('accounts for every row', () => {
    const folder = scratch();
    run(folder, ['report', story, '--out', 'results']);
    const { files, ledger } = JSON.parse(readFileSync(join(folder, 'results/HL-104-analysis.json'), 'utf8'));
    for (const one of [ledger, ...files.map((file: { ledger: object }) => file.ledger)]) {
      expect(one.used + one.duplicate + one.setAside + one.notes + one.ignored).toBe(one.rows);
    }
    const lines = readdirSync(story)
      .filter((name) => /\.(csv|tsv)$/.test(name))
      .map((name) => readFileSync(join(story, name), 'utf8').trimEnd().split('\n').length);
    expect(ledger.rows).toBe(lines.reduce((sum, n) => sum + n, 0));
  });

  test('gives the same bytes wherever and whenever it is made', () => {
    const folder = scratch();
    run(folder, ['report', story, '--out', 'a'], { TZ: 'UTC', LANG: 'C' });
    run(folder, ['report', story, '--out', 'b'], { TZ: 'Pacific/Auckland', LANG: 'de_DE.UTF-8' });
    expect(listed(join(folder, 'a'))).toEqual(listed(join(folder, 'b')));
    for (const name of listed(join(folder, 'a'))) {
      const [a, b] = ['a', 'b'].map((from) => readFileSync(join(folder, from, name)));
      expect(a!.equals(b!), name).toBe(true);
    }
  });

  test('is sound for independent readers of PDF', () => {
    const folder = scratch();
    run(folder, ['report', story, '--out', 'r', '--paper', 'letter']);
    for (const name of listed(join(folder, 'r')).filter((each) => each.endsWith('.pdf'))) {
      const path = join(folder, 'r', name);
      expect(execFileSync('qpdf', ['--check', path], { encoding: 'utf8' })).toContain(
        'No syntax or stream encoding errors',
      );
      // US Letter is 8.5 by 11 inches (ANSI/ASME Y14.1), 72 points each.
      expect(execFileSync('pdfinfo', [path], { encoding: 'utf8' })).toContain('612 x 792 pts');
    }
  });

  test('stays on one sheet for the person', () => {
    const folder = scratch();
    run(folder, ['report', story, '--out', 'r']);
    const info = execFileSync('pdfinfo', [join(folder, 'r/HL-104-patient-paper.pdf')], { encoding: 'utf8' });
    expect(Number(/^Pages:\s+(\d+)/m.exec(info)![1])).toBeLessThanOrEqual(2);
  });

  test('prints no name that was not given, in the papers or their names', () => {
    const folder = scratch();
    run(folder, ['report', join(story, 'readings.csv'), '--out', 'r', '--code', 'X-1', '--name', 'Zwentibold']);
    expect(listed(join(folder, 'r')).join(' ')).not.toContain('Zwentibold');
    const pdf = readFileSync(join(folder, 'r/X-1-clinic-report.pdf'), 'latin1');
    expect(pdf).not.toContain('Zwentibold');
  });
});

describe('settings', () => {
  const files = {
    'a.csv': plainExport(),
    'settings.json': '{ "code": "FROM-FILE", "targets": "older", "date": "2026-04-01" }',
  };

  test('beside the files are used and told', () => {
    const folder = scratch(files);
    const { out, exit } = run(folder, ['report', 'a.csv']);
    expect(exit).toBe(0);
    expect(out).toContain('settings.json: targets, code, date');
    const { settings, targets } = JSON.parse(readFileSync(join(folder, 'reports/FROM-FILE-analysis.json'), 'utf8'));
    expect([settings.today, targets.id]).toEqual(['2026-04-01', 'older']);
  });

  test('give way to the command line, and that is told', () => {
    const folder = scratch(files);
    const { out } = run(folder, ['report', '.', '--code', 'MINE', '--targets', 'adult']);
    expect(out).toMatch(/command line instead: targets, code/);
    const { targets } = JSON.parse(readFileSync(join(folder, 'reports/MINE-analysis.json'), 'utf8'));
    expect(targets.id).toBe('adult');
  });

  test('that are wrong stop everything, with the line', () => {
    const folder = scratch({ 'a.csv': plainExport(), 'settings.json': '{\n  "target": "older"\n}' });
    const { exit, err } = run(folder, ['report', 'a.csv']);
    expect(exit).toBe(64);
    expect(err).toContain('settings.json:2:');
    expect(listed(join(folder, 'reports'))).toEqual([]);
  });
});

describe('wrong use ends with 64, says what to give instead, and writes nothing', () => {
  test.each<[string, string[], RegExp]>([
    ['no such file', ['report', 'nothing.csv'], /no file or folder "nothing.csv"/],
    ['a folder without exports', ['report', 'empty'], /holds no export/],
    ['no file at all', ['report'], /missing required argument/],
    ['an unknown option', ['report', 'a.csv', '--colour'], /unknown option/],
    ['an unknown unit', ['report', 'a.csv', '--unit', 'mg'], /mg\/dL, mmol\/L/],
    ['unknown targets', ['report', 'a.csv', '--targets', 'child'], /adult, older/],
    ['a day that does not exist', ['report', 'a.csv', '--from', '2026-02-30'], /YYYY-MM-DD/],
    ['days and dates', ['report', 'a.csv', '--days', '7', '--from', '2026-03-02'], /not both/],
    ['dates the wrong way round', ['report', 'a.csv', '--from', '2026-03-09', '--to', '2026-03-02'], /later than/],
    ['no whole days', ['report', 'a.csv', '--days', '1.5'], /whole number/],
    ['an unknown zone', ['report', 'a.csv', '--zone', 'Middle/Earth'], /Europe\/Madrid/],
    ['a layout that is none', ['report', 'a.csv', '--layout', 'a.csv'], /layout/i],
  ])('%s', (_, args, message) => {
    const folder = scratch({ 'a.csv': plainExport() });
    mkdirSync(join(folder, 'empty'));
    const { exit, err } = run(folder, args);
    expect(err).toMatch(message);
    expect(exit).toBe(64);
    expect(listed(folder)).toEqual(['a.csv', 'empty']);
  });
});

describe('input that cannot be read safely ends with 1, says why, and writes nothing', () => {
  test.each<[string, Record<string, string | Uint8Array>]>([
    ['an empty file', { 'a.csv': '' }],
    ['a header alone', { 'a.csv': 'Time,Sensor glucose (mg/dL)\n' }],
    ['binary', { 'a.csv': Uint8Array.from({ length: 5000 }, (_, i) => (i * 7919) % 251) }],
    ['a picture', { 'a.csv': new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13]) }],
    ['a million characters on one line', { 'a.csv': 'x'.repeat(1_000_000) }],
    ['text that is no table', { 'a.csv': 'Dear doctor,\nI lost my sensor.\nYours\n' }],
    [
      'two persons',
      {
        'a.csv': `Person,Time,Sensor glucose (mg/dL)\n${'A1,2026-03-02 10:00,100\n'.repeat(1)}A1,2026-03-02 10:05,101\nB2,2026-03-02 10:10,102\n`,
      },
    ],
  ])('%s', (_, files) => {
    const folder = scratch(files);
    const { exit, err } = run(folder, ['report', 'a.csv']);
    expect(err).toContain('cannot go on: ');
    expect(err).not.toMatch(/not foreseen|undefined|NaN|\[object/);
    expect(exit).toBe(1);
    expect(listed(folder)).toEqual(['a.csv']);
  });

  test('a unit that the numbers speak against', () => {
    const folder = scratch({ 'a.csv': plainExport(15, 'mmol/L') });
    const { exit, err } = run(folder, ['report', 'a.csv']);
    expect(err).toContain('cannot go on: ');
    expect(exit).toBe(1);
  });
});

describe('odd but readable input', () => {
  test('one reading gives papers that say how little that is', () => {
    const folder = scratch({ 'a.csv': 'Time,Sensor glucose (mg/dL)\n2026-03-02 10:00,100\n' });
    const { exit } = run(folder, ['report', 'a.csv']);
    expect(exit).toBe(0);
    expect(listed(join(folder, 'reports')).length).toBeGreaterThanOrEqual(3);
  });

  test('a name with markup and a formula stays text, and never becomes a path', () => {
    const folder = scratch({ 'a.csv': plainExport() });
    const name = '=<script>alert(1)</script> & "Ann"';
    const { exit, err } = run(folder, ['report', 'a.csv', '--name', name, '--code', '../../P/17']);
    expect(err).toBe('');
    expect(exit).toBe(0);
    expect(listed(join(folder, 'reports'))).toContain('P-17-clinic-report.pdf');
    const path = join(folder, 'reports/P-17-clinic-report.pdf');
    expect(execFileSync('pdftotext', [path, '-'], { encoding: 'utf8' })).toContain(name);
  });

  test('rows that cannot be trusted are listed with line and reason, and no cell can act as a formula', () => {
    const rows = plainExport().trimEnd().split('\n');
    rows.splice(20, 0, '2026-03-02 01:36,=HYPERLINK("x")', '2026-03-42 10:00,120');
    const folder = scratch({ 'a.csv': `${rows.join('\n')}\n` });
    const { exit } = run(folder, ['report', 'a.csv', '--code', 'P']);
    expect(exit).toBe(0);
    const listed = readFileSync(join(folder, 'reports/P-set-aside.csv'), 'utf8').trimEnd().split('\r\n');
    expect(listed.length).toBe(3);
    expect(listed[1]).toContain('21');
    expect(listed.join('\n')).not.toMatch(/(^|,)"?[=+@]/m);
  });
});

describe('files appear whole or not at all', () => {
  test('a folder that cannot be written to', () => {
    const folder = scratch({ 'a.csv': plainExport(), blocked: 'a file, not a folder' });
    const { exit, err } = run(folder, ['report', 'a.csv', '--out', 'blocked/in']);
    expect(err).toMatch(/Nothing was written.*blocked\/in/);
    expect(exit).toBe(2);
    expect(listed(folder)).toEqual(['a.csv', 'blocked']);
  });

  test.skipIf(process.getuid?.() === 0)('a folder without permission', () => {
    const folder = scratch({ 'a.csv': plainExport() });
    mkdirSync(join(folder, 'locked'));
    chmodSync(join(folder, 'locked'), 0o500);
    expect(run(folder, ['report', 'a.csv', '--out', 'locked']).exit).toBe(2);
    expect(listed(join(folder, 'locked'))).toEqual([]);
  });

  test('an input is never overwritten', () => {
    const folder = scratch({ 'x-analysis.json': '{}' });
    writeFileSync(join(folder, 'x-analysis.json'), plainExport());
    const before = statSync(join(folder, 'x-analysis.json')).mtimeMs;
    const { exit, err } = run(folder, ['report', 'x-analysis.json', '--code', 'x', '--out', '.']);
    expect(err).toMatch(/would be overwritten/);
    expect(exit).toBe(64);
    expect(statSync(join(folder, 'x-analysis.json')).mtimeMs).toBe(before);
    expect(listed(folder)).toEqual(['x-analysis.json']);
  });
});
