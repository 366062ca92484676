import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { create } from 'fontkit';
import { expect, test } from 'vitest';
import { plainSetter } from '../../src/writers/pdf/plainSetter.ts';

/** fontkit's full shaper is the outside value: where our short way gives a run at all, it must give the same one. */
const fonts = '../../node_modules/@expo-google-fonts/ibm-plex-sans';
const faces = ['400Regular/IBMPlexSans_400Regular.ttf', '600SemiBold/IBMPlexSans_600SemiBold.ttf'];

interface Shaped {
  glyphs: { id: number; codePoints: number[]; advanceWidth: number }[];
  positions: { xAdvance: number; xOffset: number }[];
  advanceWidth: number;
}

const placed = ({ glyphs, positions }: Shaped): unknown => [
  glyphs.map(({ id, codePoints, advanceWidth }) => [id, codePoints, advanceWidth]),
  positions.map(({ xAdvance, xOffset }) => [xAdvance, xOffset]),
];

test.each(faces)('%s: every pair of ASCII characters, and text, as the full shaper sets them', (face) => {
  const bytes = readFileSync(new URL(`${fonts}/${face}`, import.meta.url));
  const font = create(bytes);
  const plain = plainSetter(bytes)!;
  const byWord = (text: string) =>
    text.split(/(?<= )/).reduce((sum, word) => sum + (font.layout(word) as Shaped).advanceWidth, 0);
  const ascii = Array.from({ length: 95 }, (_, i) => String.fromCharCode(32 + i));
  const pairs = ascii.flatMap((left) => ascii.map((right) => left + right));
  const texts = [
    'Tofu AVATAR',
    'first finger',
    'efficient',
    'Tfi fl VflAfi',
    'Łódź',
    'Größe',
    '−12 ≤ 5 → 7',
    '10\u202fmg',
    '“To”',
    '',
    'ﬁ',
  ];
  for (const text of [...pairs, ...texts]) {
    const run = plain.layout(text);
    if (run) expect(placed(run), text).toEqual(placed(font.layout(text) as Shaped));
    expect(plain.width(text) === null, text).toBe(run === null);
    if (run) expect(plain.width(text), text).toBeCloseTo(byWord(text), 9);
  }
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 30 }), (text) => {
      const known = [...text].filter((c) => font.hasGlyphForCodePoint(c.codePointAt(0)!)).join('');
      const run = plain.layout(known);
      if (run) expect(placed(run)).toEqual(placed(font.layout(known) as Shaped));
    }),
    { numRuns: 200 },
  );
});

test('marks and other scripts are left to the full shaper', () => {
  const bytes = readFileSync(new URL(`${fonts}/${faces[0]}`, import.meta.url));
  const plain = plainSetter(bytes)!;
  for (const text of ['e\u0301', 'я', 'α', '½\u2044', 'نص']) expect(plain.layout(text)).toBeNull();
});
