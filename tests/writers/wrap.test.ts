import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { deflate } from '../../src/bytes/pack.ts';
import { openPdf } from '../../src/writers/pdf/document.ts';
import { openFace } from '../../src/writers/pdf/face.ts';
import { openTypeface, type Typeface } from '../../src/writers/pdf/typeface.ts';
import { clean } from '../../src/writers/pdf/words.ts';
import { cut, wrap } from '../../src/writers/pdf/wrap.ts';
import { FONTS } from './paper.ts';

let face: Typeface;

beforeAll(() => {
  const pdf = openPdf({ title: 't', language: 'en', size: [100, 100], printed: '2031-01-01', deflate, producer: 'p' });
  face = openTypeface(pdf, FONTS, 'regular', 'ltr');
});

test('digits all take the same room, so that columns of numbers line up', () => {
  const widths = [...'0123456789'].map((digit) => face.width(digit.repeat(3), 10));
  expect(new Set(widths).size).toBe(1);
});

test('a face is parsed once', () => {
  expect(openFace(FONTS.regular)).toBe(openFace(FONTS.regular));
});

test.each<[string, string, number, string[]]>([
  ['one line', 'a b', 100, ['a b']],
  ['two lines, the space kept', 'aaaa bbbb', 35, ['aaaa ', 'bbbb']],
  ['a line end in the text', 'a b c d\nb', 100, ['a b c d ', 'b']],
  ['runs of spaces', '  a   b ', 100, ['a b']],
  ['a long word after its hyphen', 'aaaa-bbbb', 35, ['aaaa-', 'bbbb']],
  ['a long word between letters', 'mmmmmmmm', 36, ['mmmm', 'mmmm']],
  ['numbers and units bound by a no-break space', 'aaa 70\u00A0mg', 40, ['aaa ', '70\u00A0mg']],
  [
    'a lonely last word with the one before it',
    'aaa aaa aaa aaa aaa 3:27 AM.',
    108,
    ['aaa aaa aaa aaa aaa ', '3:27 AM.'],
  ],
  ['a lonely last word after a short line', 'aaa aaa bb', 40, ['aaa aaa ', 'bb']],
  ['nothing', '', 100, ['']],
])('wraps %s', (_, text, width, lines) => {
  expect(wrap(text, face, 10, width)).toEqual(lines);
});

test('no line is wider than its column, and no letter is lost', () => {
  const texts = fc.string({ unit: fc.constantFrom(...'abcmW1 -/.\u00A0é'), maxLength: 200 });
  fc.assert(
    fc.property(texts, fc.integer({ min: 14, max: 200 }), (text, width) => {
      const lines = wrap(text, face, 10, width);
      // Kerning between the letters of a broken word is not counted: a twentieth of a point a letter.
      for (const line of lines) expect(face.width(line.trimEnd(), 10)).toBeLessThanOrEqual(width + line.length * 0.05);
      expect(lines.join('').replace(/\s/g, '')).toBe(text.replace(/\s/g, ''));
    }),
  );
});

test('cuts with an ellipsis', () => {
  const short = cut('Featherstonehaugh', face, 10, 50);
  expect(short).toMatch(/^Feather.*…$/);
  expect(face.width(short, 10)).toBeLessThanOrEqual(50);
});

test.each([
  ['e\u0301', 'é'],
  ['a\u0000\u200B\u202Eb\uFEFF', 'ab'],
  ['a\r\nb\rc\u2028d', 'a\nb\nc\nd'],
  ['tab\there', 'tab here'],
  ['\uD800x', '\uFFFDx'],
])('cleans %j', (text, cleaned) => {
  expect(clean(text)).toBe(cleaned);
});

test('a character no face has is shown as replaced; the rest of the name stands', () => {
  expect(face.readable('Ωμέγα Жук ≥ 7')).toBe('Ωμέγα Жук ≥ 7');
  expect(face.readable('Li 山 🙈')).toBe('Li 山 \uFFFD');
  expect(face.readable('\u{12000} \ud83d x')).toBe('\uFFFD \uFFFD x');
});
