import fc from 'fast-check';
import { expect, test } from 'vitest';
import { safeName } from '../../src/papers/safeName.ts';

const cases: [what: string, text: string, name: string][] = [
  ['a plain code', 'P-17', 'P-17'],
  ['spaces and dots', 'Visit 3. May', 'Visit-3-May'],
  ['a path', '../../etc/passwd', 'etc-passwd'],
  ['a Windows path', 'C:\\Users\\x', 'C-Users-x'],
  ['markup', '<b>Ann</b>', 'b-Ann-b'],
  ['letters of other scripts', 'مريم 李', 'مريم-李'],
  ['marks written apart', 'Ze\u0301', 'Z\u00e9'],
  ['a direction override', 'a\u202egnp.exe', 'a-gnp-exe'],
  ['a line break', 'a\nb', 'a-b'],
  ['nothing left', '///', 'daybands'],
  ['a leading dot', '.hidden', 'hidden'],
  ['a device name', 'con', 'con-1'],
  ['a mark without a letter', '\u0301a', 'a'],
  ['a mark and a sign without a letter', '\u0301/a', 'a'],
];

test.each(cases)('%s', (_, text, name) => {
  expect(safeName(text)).toBe(name);
});

test('whatever comes in, a short name without path signs comes out, and making it safe again changes nothing', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => {
      const name = safeName(text);
      expect(name).toMatch(/^[\p{L}\p{N}][\p{L}\p{M}\p{N}-]*$/u);
      expect(Buffer.byteLength(name)).toBeLessThanOrEqual(182);
      expect(safeName(name)).toBe(name);
    }),
  );
});
