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

  const DAY = '2026-01-14';
  const readings = (own: string, count = 40) =>
    `Time${own}Glucose (mg/dL)\n${rows(count, (i, t) => `${t.slice(0, 16)}${own}${100 + i}`)}`;
  const NOTES = [`${DAY} 08:03 meal 40 g [soup]`, `${DAY} 09:10 meal 25 g [rye]`];
  it('are found with the names of a table of their own, before the others or behind, with a line of units or none', () => {
    for (const own of DELIMITERS)
      for (const other of DELIMITERS.filter((one) => one !== own))
        for (const units of [false, true])
          for (const first of [false, true]) {
            const lines = [
              ['Time', 'Food', units ? 'Carbs' : 'Carbs (g)'],
              ...(units ? [['', '', 'g']] : []),
              [`${DAY} 08:03`, 'soup', '40'],
              [`${DAY} 09:10`, 'rye', '25'],
            ];
            const table = lines.map((cells) => cells.join(other)).join('\n');
            const text = first ? `${table}\n\n${readings(own)}` : `${readings(own).trimEnd()}\n\n${table}\n`;
            const digest = tell(text);
            const which = JSON.stringify({ own, other, units, first });
            expect(digest.readings, which).toHaveLength(40);
            expect(digest.notes, which).toEqual(NOTES);
            // What is printed as the layout reads the same.
            const again = tell(text, { layout: digest.file.layout });
            expect(again.notes, which).toEqual(NOTES);
            expect(again.readings, which).toEqual(digest.readings);
          }
  });

  it('are found where a comma in a name and in every number parts more rows than the delimiter', () => {
    for (const [own, other] of ['|;', ';|', '\t;', '|\t', ';\t', '\t|'].map(
      (pair) => pair.split('') as [string, string],
    )) {
      const body = rows(40, (i, t) => `${t.slice(0, 16)}${i < 24 ? own : other}${100 + i},0`);
      const notes = [
        [`${DAY} 08:03`, '3,5', '', ''],
        [`${DAY} 09:10`, '', 'rye', '25'],
      ];
      const digest = tell(
        `Time${own}Sensor glucose, mg/dL\n${body.trimEnd()}\n\n${['Time', 'Rapid insulin (IU)', 'Food', 'Carbs (g)'].join(own)}\n${notes.map((cells) => cells.join(other)).join('\n')}\n`,
      );
      expect(digest.readings, own + other).toHaveLength(40);
      expect(digest.notes, own + other).toEqual([`${DAY} 08:03 insulin 3.5 IU [rapid]`, NOTES[1]]);
    }
  });

  it('are a loss, and never a line of words, where no names fit them', () => {
    for (const row of [`${DAY} 08:03;soup;40;x`, '14.01.2026;08:03;soup;40', `${DAY}T08:03:00Z\t\t7`]) {
      const digest = tell(`${readings('|')}${row}\n`);
      expect(digest.issues).toContain('warning time-unreadable 42');
      expect(digest.readings).toHaveLength(40);
    }
    for (const row of ['Printed: 2026-01-14 08:03; page 1; of 2', '2026-01-14; printed; of 2', `${DAY} 08:03`])
      expect(tell(`${readings('|')}${row}\n`).issues.join()).not.toContain('time-unreadable');
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
