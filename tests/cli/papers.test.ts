import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { run as tool } from '../support/tools.ts';
import { home, listed, plainExport, run, scratch } from './run.ts';

const story = join(home, 'sample-data/steady-fortnight');
const clinic = 'HL-104-clinic-report.pdf';

describe('a code instead of a name', () => {
  test('leaves the name of the settings and of the files out of everything that is written', () => {
    const folder = scratch();
    mkdirSync(join(folder, 'Zwentibold'));
    const rows = plainExport().trimEnd().split('\n');
    rows.splice(20, 0, '2026-03-42 10:00,120');
    writeFileSync(join(folder, 'Zwentibold/Zwentibold Meier.csv'), `${rows.join('\n')}\n`);
    writeFileSync(join(folder, 'Zwentibold/settings.json'), '{ "name": "Zwentibold Meier", "date": "2026-04-01" }');
    const { exit, out } = run(folder, ['report', 'Zwentibold', '--code', 'X-1', '--out', 'r', '--attach']);
    expect(exit).toBe(0);
    // Whoever sits at the command knows the files by their own names.
    expect(out).toContain('Zwentibold Meier.csv is called X-1-file-1.csv in the results.');
    expect(out).toMatch(/Zwentibold Meier\.csv:21: /);
    const papers = listed(join(folder, 'r'));
    expect(papers.length).toBeGreaterThanOrEqual(4);
    expect(papers.join(' ')).not.toMatch(/zwentibold|meier/i);
    for (const name of papers) {
      const path = join(folder, 'r', name);
      const text = name.endsWith('.pdf')
        ? tool('pdftotext', [path, '-']) + tool('pdfinfo', ['-struct-text', path])
        : '';
      expect(`${text}${readFileSync(path, 'latin1')}`, name).not.toMatch(/zwentibold|meier/i);
    }
    expect(readFileSync(join(folder, 'r/X-1-set-aside.csv'), 'utf8')).toContain('X-1-file-1.csv,21');
  });

  test('and a name, when both are asked for, are both printed; title and metadata keep the code, and no name', () => {
    const folder = scratch();
    run(folder, ['report', story, '--code', 'X-1', '--name', 'Zwentibold', '--out', 'r']);
    const path = join(folder, 'r/X-1-patient-paper.pdf');
    expect(tool('pdftotext', [path, '-'])).toContain('Zwentibold · X-1');
    const about = tool('pdfinfo', [path]) + tool('pdfinfo', ['-meta', path]);
    expect(about).not.toContain('Zwentibold');
    // A screen reader and a window's tab say whose paper it is.
    expect(about).toMatch(/Title: +X-1 · /);
  });
});

test('--attach puts the numbers into the clinic report, with the date of printing only, the same each time', () => {
  const folder = scratch();
  for (const out of ['a', 'b'])
    run(folder, ['report', story, '--attach', '--out', out], { TZ: out === 'a' ? 'UTC' : 'Asia/Tokyo' });
  const [a, b] = ['a', 'b'].map((out) => readFileSync(join(folder, out, clinic)));
  expect(a!.equals(b!)).toBe(true);
  const path = join(folder, 'a', clinic);
  expect(tool('pdfdetach', ['-list', path])).toMatch(/1 embedded files\n1: HL-104-analysis\.json/);
  tool('pdfdetach', ['-save', '1', '-o', join(folder, 'numbers.json'), path]);
  expect(readFileSync(join(folder, 'numbers.json')).equals(readFileSync(join(folder, 'a/HL-104-analysis.json')))).toBe(
    true,
  );
  const raw = a!.toString('latin1');
  expect(raw).toContain('/AFRelationship /Data');
  expect([...new Set(raw.match(/\(D:[^)]*\)/g))]).toEqual(['(D:20260127000000Z)']);
  expect(tool('pdfdetach', ['-list', join(folder, 'a/HL-104-patient-paper.pdf')])).toMatch(/^0 embedded/);
  expect(tool('qpdf', ['--check', path])).toContain('No syntax or stream encoding errors');
});

describe('--password', () => {
  test('locks both papers with AES of 256 bits, and says what is not locked', () => {
    const folder = scratch();
    const { out } = run(folder, ['report', story, '--password', 'Sésam 7', '--out', 'r']);
    run(folder, ['report', story, '--out', 'open']);
    expect(out).toContain('Only the two PDF papers are locked.');
    for (const name of listed(join(folder, 'r')).filter((each) => each.endsWith('.pdf'))) {
      const path = join(folder, 'r', name);
      expect(() => tool('pdftotext', [path, '-'])).toThrow(/Incorrect password/);
      expect(() => tool('pdftotext', ['-upw', 'sésam 7', path, '-'])).toThrow(/Incorrect password/);
      expect(tool('pdftotext', ['-upw', 'Sésam 7', path, '-'])).toBe(
        tool('pdftotext', [join(folder, 'open', name), '-']),
      );
      // Printing, copying and reading aloud stay allowed.
      expect(tool('pdfinfo', ['-upw', 'Sésam 7', path])).toMatch(
        /Encrypted: +yes \(print:yes copy:yes .*algorithm:AES-256\)/,
      );
      expect(tool('qpdf', ['--password=Sésam 7', '--check', path])).toContain('No syntax or stream encoding errors');
    }
  });

  test('an empty one is refused', () => {
    const folder = scratch();
    const { exit, err } = run(folder, ['report', story, '--password', '', '--out', 'r']);
    expect([exit, listed(join(folder, 'r'))]).toEqual([64, []]);
    expect(err).toContain('The password is empty.');
  });
});

test('--large takes more sheets, in type of 16 points and more', () => {
  const folder = scratch();
  run(folder, ['report', story, '--large', '--out', 'r']);
  const pages = /Pages: +(\d+)/.exec(tool('pdfinfo', [join(folder, 'r/HL-104-patient-paper.pdf')]))![1];
  expect(Number(pages)).toBeGreaterThan(2);
  expect(Number(pages)).toBeLessThanOrEqual(5);
});

test('a Hebrew name and Chinese foods reach both papers', () => {
  const notes =
    'Time,Food,Carbs (g)\n2026-03-10 12:30,番茄炒蛋,45\n2026-03-12 12:40,番茄炒蛋,50\n2026-03-14 18:30,抹茶アイス,30\n';
  const folder = scratch({ 'a.csv': plainExport(), 'b.csv': notes });
  const { exit } = run(folder, [
    'report',
    'a.csv',
    'b.csv',
    '--name',
    'מרית לוי',
    '--code',
    '104',
    '--date',
    '2026-04-01',
    '--further',
  ]);
  expect(exit).toBe(0);
  const furtherText = tool('pdftotext', [join(folder, 'reports/104-further-pages.pdf'), '-']);
  expect(furtherText).toContain('番茄炒蛋');
  for (const paper of ['clinic-report', 'patient-paper']) {
    const path = join(folder, `reports/104-${paper}.pdf`);
    expect(tool('pdftotext', [path, '-'])).toContain('מרית לוי');
    expect(tool('pdffonts', [path])).toMatch(/DejaVuSans/);
  }
  expect(tool('pdffonts', [join(folder, 'reports/104-further-pages.pdf')])).toMatch(
    /NotoSansHans-Regular +CID Type 0C +Identity-H +yes yes yes/,
  );
});
