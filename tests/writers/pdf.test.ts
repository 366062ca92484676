import { JSDOM } from 'jsdom';
import { beforeAll, describe, expect, test } from 'vitest';
import { CONTENT_WIDTH } from '../../src/charts/frame.ts';
import { type Opened, open, operators, pageOf, write } from './paper.ts';
import { sampleReport } from './sample.ts';

const clinic = sampleReport();
const patient = sampleReport({ voice: 'patient', paper: 'letter' });

describe('the file', () => {
  test('says what it is: title, language, bookmarks, one date', async () => {
    const bytes = await write(clinic);
    const file = await open(bytes);
    expect(file.title).toBe(clinic.tab);
    expect(file.language).toBe('en');
    expect(file.bookmarks).toEqual(clinic.pages.map((page) => page.title));
    const text = Buffer.from(bytes).toString('latin1');
    expect(text.startsWith('%PDF-1.7')).toBe(true);
    expect(text).toContain('/DisplayDocTitle true');
    expect([...new Set(text.match(/\(D:[^)]*\)/g))]).toEqual(['(D:20310610000000Z)']);
  });

  test('is the same to the byte when made again', async () => {
    const [one, two] = [await write(clinic), await write(clinic)];
    expect(Buffer.compare(one, two)).toBe(0);
    // Other documents in between leave no trace, though they share fonts and word layouts.
    await write(pageOf([{ kind: 'paragraph', style: 'body', text: 'Ünüsual Ωords ẞ' }]));
    expect(Buffer.compare(one, await write(clinic))).toBe(0);
  });

  test('embeds its two faces and names no built-in one', async () => {
    const text = Buffer.from(await write(clinic)).toString('latin1');
    expect(text).not.toMatch(/Helvetica|Times|Courier/);
    expect(text.match(/\/FontFile2/g)).toHaveLength(2);
  });

  test('keeps its metadata well-formed when the title holds markup', async () => {
    const title = 'A & B <c> "d" ]]>';
    const bytes = await write({ ...clinic, tab: title });
    const text = Buffer.from(bytes).toString('utf8');
    const packet = text.slice(text.indexOf('<x:xmpmeta'), text.indexOf('</x:xmpmeta>') + '</x:xmpmeta>'.length);
    const { window } = new JSDOM('');
    const xml = new window.DOMParser().parseFromString(packet, 'text/xml');
    expect(xml.querySelector('parsererror')).toBeNull();
    expect(xml.getElementsByTagName('dc:title')[0]?.textContent?.trim()).toBe(title);
    expect((await open(bytes)).title).toBe(title);
  });
});

describe.each([
  ['clinic report on A4', clinic, 595.28],
  ['patient paper on US Letter', patient, 612],
])('%s', (_, report, paperWidth) => {
  let bytes: Uint8Array;
  let file: Opened;
  beforeAll(async () => {
    bytes = await write(report);
    file = await open(bytes);
  });

  test('carries its standing lines on every sheet, numbered', () => {
    const { sheets } = file;
    sheets.forEach((sheet, i) => {
      expect(sheet.text).toContain(report.header.left);
      expect(sheet.text).toContain(`Sheet ${i + 1} of ${sheets.length}`);
      expect(sheet.text).toContain(report.footer.right);
    });
  });

  test('keeps all text inside the content box', () => {
    const left = Math.ceil((paperWidth - CONTENT_WIDTH) / 2);
    for (const { pieces } of file.sheets) {
      for (const piece of pieces) {
        expect(piece.x, piece.text).toBeGreaterThanOrEqual(left - 0.1);
        // The space at the end of a broken line may hang out.
        expect(piece.x + piece.width - piece.size * 0.25, piece.text).toBeLessThanOrEqual(left + CONTENT_WIDTH + 0.5);
        // 15 mm, the smallest margin of either paper.
        expect(piece.y).toBeGreaterThan(42.5);
      }
    }
  });

  test('marks every operator that paints as content or as an artifact', () => {
    for (const sheet of operators(bytes)) {
      let open = 0;
      let painted = 0;
      for (const line of sheet.split('\n')) {
        if (/ BDC$/.test(line)) open++;
        if (line === 'EMC') open--;
        if (!/(^| )(S|f\*|TJ ET)$/.test(line)) continue;
        expect(open, line).toBe(1);
        painted++;
      }
      expect([open, painted > 10]).toEqual([0, true]);
    }
  });

  test('is read in order: one top heading, no level skipped, every figure described', () => {
    const { elements } = file;
    const levels = elements.flatMap(({ role }) => (/^H\d$/.test(role) ? [Number(role.slice(1))] : []));
    expect(levels.filter((level) => level === 1)).toEqual([1]);
    expect(levels[0]).toBe(1);
    levels.forEach((level, i) => {
      expect(level).toBeLessThanOrEqual((levels[i - 1] ?? 0) + 1);
    });
    const figures = elements.filter(({ role }) => role === 'Figure');
    expect(figures).toHaveLength(16);
    for (const figure of figures) expect(figure.alt).toMatch(/\d/);
    expect(elements.map(({ role }) => role)).toEqual(
      expect.arrayContaining(['L', 'LI', 'LBody', 'Table', 'TR', 'TH', 'TD']),
    );
  });

  test('prints nothing smaller than its smallest size', () => {
    for (const { pieces } of file.sheets) {
      for (const { text, size, y } of pieces) {
        // Letters of note marks and axis labels belong to the charts.
        const drawn = text.length <= 9;
        const standing = y > 720 || y < 90;
        const least = drawn ? 5.5 : report.voice === 'clinic' ? 8.5 : standing ? 9 : 12;
        expect(size, text).toBeGreaterThanOrEqual(least - 0.01);
      }
    }
  });
});

test('one layout serves both papers: every piece of text lies at the same place of the content box', async () => {
  const [a4, letter] = await Promise.all(
    (['a4', 'letter'] as const).map(async (paper) => open(await write({ ...clinic, paper }))),
  );
  expect(letter!.sheets.length).toBe(a4!.sheets.length);
  a4!.sheets.forEach((sheet, i) => {
    const other = letter!.sheets[i]!.pieces;
    const [dx, dy] = [other[0]!.x - sheet.pieces[0]!.x, other[0]!.y - sheet.pieces[0]!.y];
    expect(other.map(({ text }) => text)).toEqual(sheet.pieces.map(({ text }) => text));
    other.forEach((piece, n) => {
      expect(piece.x - sheet.pieces[n]!.x).toBeCloseTo(dx, 1);
      expect(piece.y - sheet.pieces[n]!.y).toBeCloseTo(dy, 1);
    });
  });
});

test('a chart with a coordinate that is no number is refused with its name, not drawn broken', async () => {
  for (const bad of [Number.NaN, Number.POSITIVE_INFINITY]) {
    const drawing = {
      width: 100,
      height: 50,
      summary: 'A broken chart.',
      marks: [{ kind: 'line' as const, role: 'trace' as const, lines: [[0, 0, 10, bad]], width: 1 }],
    };
    await expect(write(pageOf([{ kind: 'chart', drawing }]))).rejects.toThrow(
      'mark 0 (line, trace) of the chart "A broken chart." has a coordinate that is not a number',
    );
  }
});
