import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect } from 'vitest';
import { needs, run } from '../support/tools.ts';
import { pageOf, write } from './paper.ts';
import { sampleReport } from './sample.ts';

/** Programs that know PDF independently of this project look at the files. */
const folder = mkdtempSync(join(tmpdir(), 'daybands-pdf-'));
const clinic = join(folder, 'clinic.pdf');
const grey = join(folder, 'grey.pdf');
const odd = join(folder, 'odd.pdf');

beforeAll(async () => {
  writeFileSync(clinic, await write(sampleReport()));
  writeFileSync(grey, await write(sampleReport({ voice: 'patient', paper: 'letter' }), { grey: true }));
  writeFileSync(
    odd,
    await write(pageOf([{ kind: 'paragraph', style: 'body', text: '山 (x) \\ ] \u0301' }], { title: '山 <&>' })),
  );
});
afterAll(() => rmSync(folder, { recursive: true }));

needs('qpdf')('qpdf finds no fault in syntax or streams', () => {
  for (const file of [clinic, grey, odd])
    expect(run('qpdf', ['--check', file])).toContain('No syntax or stream encoding errors');
});

needs('pdffonts')('both faces are embedded as subsets with their Unicode values', () => {
  for (const file of [clinic, grey]) {
    const lines = run('pdffonts', [file]).trim().split('\n').slice(2);
    expect(lines).toHaveLength(2);
    for (const line of lines)
      expect(line).toMatch(/\+IBMPlexSans-(Regular|SemiBold) +CID TrueType +Identity-H +yes yes yes/);
  }
});

needs('pdftotext')('the text comes out in reading order', () => {
  const text = run('pdftotext', [clinic, '-']);
  const order = [
    'What we had to work with',
    'Lows first',
    'Episodes below 70 mg/dL',
    'Tue 1 June, 02:15',
    'Day strips',
    'Left out, and why',
  ];
  const places = order.map((words) => text.indexOf(words));
  expect(places.every((place) => place >= 0)).toBe(true);
  expect(places).toEqual([...places].sort((a, b) => a - b));
});

needs('pdfinfo')('the structure tree holds words apart, and the head of a table once', () => {
  const tree = run('pdfinfo', ['-struct-text', clinic]);
  expect(tree).toContain('13 days and 2 hours');
  expect(tree.match(/"Lowest"/g)).toHaveLength(2);
  expect(tree).toContain('/Scope /Column');
  expect(run('pdfinfo', [clinic])).toMatch(/Tagged: +yes/);
});

needs('pdftoppm')('every sheet has ink, and none beyond 12 mm of its edges', () => {
  for (const file of [clinic, grey]) {
    run('pdftoppm', ['-r', '36', '-gray', file, file]);
    for (const page of pagesOf(file)) {
      const { width, height, data } = page;
      let ink = 0;
      let outside = 0;
      const edge = Math.floor((12 / 25.4) * 36);
      for (let y = 0; y < height; y++) {
        for (let x = 0; x < width; x++) {
          if (data[y * width + x]! > 200) continue;
          ink++;
          if (x < edge || x >= width - edge || y < edge || y >= height - edge) outside++;
        }
      }
      expect([ink > 50, outside]).toEqual([true, 0]);
    }
  }
});

/** Portable grey maps that pdftoppm has written beside a file. */
function pagesOf(file: string): { width: number; height: number; data: Uint8Array }[] {
  return readdirSync(folder)
    .filter((name) => join(folder, name).startsWith(`${file}-`))
    .map((name) => {
      const bytes = readFileSync(join(folder, name));
      const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString('latin1'))!;
      return { width: Number(head[1]), height: Number(head[2]), data: bytes.subarray(head[0].length) };
    });
}
