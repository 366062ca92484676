import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rows, tell } from './digest.ts';

describe('rows parted by another delimiter than the rest', () => {
  const DELIMITERS = [',', ';', '\t', '|'];
  it('are read, whatever the two are', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...DELIMITERS),
        fc.constantFrom(...DELIMITERS),
        fc.integer({ min: 12, max: 29 }),
        fc.boolean(),
        (own, other, from, comma) => {
          fc.pre(own !== other && !(comma && (own === ',' || other === ',')));
          const body = rows(30, (i, t) =>
            [t.slice(0, 16), comma ? `${100 + i},5` : 100 + i, i % 7 === 0 ? 'x' : ''].join(i >= from ? other : own),
          );
          const digest = tell(`${['Time', 'Glucose (mg/dL)', 'Note'].join(own)}\n${body}`);
          expect(digest.readings).toHaveLength(30);
          expect(digest.notes).toHaveLength(5);
          expect(digest.issues.filter((issue) => issue.includes('rows-other-delimiter'))).toHaveLength(1);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('are read where a comma within their dates parts them by chance', () => {
    const day = (t: string) => `Wed, 14 Jan 2026 ${t.slice(11, 16)}`;
    for (const other of [';', '\t', '|']) {
      const digest = tell(
        `Time,Glucose (mg/dL)\n${rows(12, (i, t) => (i < 8 ? `"${day(t)}",${100 + i}` : `${day(t)}${other}${100 + i}`))}`,
      );
      expect(digest.readings.at(-1)).toBe('2026-01-14 08:55 111 mg/dL');
      expect(digest.readings).toHaveLength(12);
    }
  });

  it('are found under a second header too', () => {
    const digest = tell(
      `Time|Glucose (mg/dL)\n${rows(12, (i, t) => `${t.slice(0, 16)}|${100 + i}`)}\n\nTime|Food|Carbs (g)\n2026-01-14 08:03;soup;40\n`,
    );
    expect(digest.notes).toEqual(['2026-01-14 08:03 meal 40 g [soup]']);
  });

  it('keep the lines that a person counts', () => {
    const digest = tell(
      `Time,Glucose (mg/dL)\n${rows(12, (i, t) => `${t.slice(0, 16)}${i < 8 ? ',' : ';'}${i === 10 ? 'x' : 100 + i}`)}`,
    );
    expect(digest.issues).toContain('warning value-not-a-number 12');
  });
});

it('reads a column far to the right', () => {
  const names = Array.from({ length: 900 }, (_, i) => `X${i}`).join(';');
  const digest = tell(
    `Time;${names};Glucose (mg/dL)\n${rows(12, (i, t) => `${t.slice(0, 16)}${';'.repeat(901)}${100 + i}`)}`,
  );
  expect(digest.readings).toHaveLength(12);
});
