import { expect, test } from 'vitest';
import type { Read, Ticked } from '../../src/page/messages.ts';
import { toPrint } from '../../src/page/state/printing.ts';

const printed = (sheets: Ticked[], remarks = true): string =>
  toPrint({ sheets, read: { remarks } as Read })
    .map(([sheet, of]) => `${sheet} ${of}`)
    .join(', ');

test.each<[Ticked[], boolean, string]>([
  [['clinic', 'remarks', 'patient'], true, 'clinic with, patient with'],
  [['clinic', 'patient'], true, 'clinic without, patient with'],
  [['remarks', 'further'], true, 'clinic alone, further with'],
  [['remarks'], false, ''],
  [['clinic', 'remarks'], false, 'clinic without'],
  [[], true, ''],
])('%j is printed and nothing else', (sheets, remarks, expected) => {
  expect(printed(sheets, remarks)).toBe(expected);
});
