import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rows, tell } from './digest.ts';

/** Readings every five minutes, the date written on the first row of a day only. */
function dayRows(count: number, cell: (i: number) => string | number, start = '2026-01-14T08:00:00Z'): string[] {
  let day = '';
  return rows(
    count,
    (i, iso) => {
      const date = iso.slice(0, 10) === day ? '' : iso.slice(0, 10);
      day = iso.slice(0, 10);
      return `${date},${iso.slice(11, 16)},${cell(i)}`;
    },
    start,
  )
    .trimEnd()
    .split('\n');
}

describe('a date written on the first row of a day', () => {
  const HEAD = 'Date,Time of day,Glucose (mg/dL)';

  it('goes on under the header repeated anywhere, also where no further date follows', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 398 }), fc.boolean(), (at, newestFirst) => {
        const all = dayRows(400, (i) => 100 + (i % 60));
        const whole = [HEAD, ...all].join('\n');
        if (newestFirst) {
          // The date then stands above the last rows of a day.
          const turned = all.map((row) => row.replace(/^[\d-]*/, '')).reverse();
          const days = rows(400, (_, iso) => iso.slice(0, 10))
            .trimEnd()
            .split('\n')
            .reverse();
          all.splice(0, 400, ...turned.map((row, i) => (days[i] === days[i - 1] ? row : days[i] + row)));
        }
        const digest = tell([HEAD, ...all.slice(0, at), HEAD, ...all.slice(at)].join('\n'));
        expect([...digest.readings].sort()).toEqual([...tell(whole).readings].sort());
      }),
      { numRuns: 40 },
    );
  });

  it('goes on under a header that names another unit', () => {
    const all = dayRows(40, (i) => (i < 25 ? 100 + i : (5.5 + i / 10).toFixed(1)));
    const digest = tell([HEAD, ...all.slice(0, 25), HEAD.replace('mg/dL', 'mmol/L'), ...all.slice(25)].join('\n'));
    expect(digest.readings).toHaveLength(40);
    expect(digest.readings[25]).toBe('2026-01-14 10:05 8 mmol/L');
  });

  it('does not go on where the times turn back or another table begins: each row is told', () => {
    const all = dayRows(20, (i) => 100 + i);
    const back = tell([HEAD, ...all, HEAD, ',00:05,120', ',00:10,121', '2026-01-16,08:00,122'].join('\n'));
    expect(back.readings).toHaveLength(21);
    expect(back.issues).toContain('warning time-unreadable 23');
    expect(back.issues).toContain('warning time-unreadable 24');
    const notes = tell([HEAD, ...all, 'Date,Time of day,Carbs (g)', ',11:00,30', '2026-01-15,12:00,40'].join('\n'));
    expect(notes.notes).toEqual(['2026-01-15 12:00 meal 40 g']);
    expect(notes.issues).toContain('warning time-unreadable 23');
  });
});

describe('a row cut behind its time is told with its line', () => {
  it.each([
    ['Time,UTC offset,Glucose (mg/dL)', (t: string, v: number) => `${t},-05:00,${v}`],
    ['Time,Time (UTC),Glucose (mg/dL)', (t: string, v: number) => `${t},${t.replace(' 0', ' 1')},${v}`],
    ['Time,Glucose (mg/dL),Note', (t: string, v: number) => `${t},${v},`],
  ])('under %s', (head, row) => {
    const body = rows(30, (i, iso) => row(iso.slice(0, 16).replace('T', ' '), 100 + i));
    const digest = tell(`${head}\n${body}2026-01-14 10:30`);
    expect(digest.readings).toHaveLength(30);
    expect(digest.file.faults.map(({ line }) => line)).toEqual([32]);
  });
});

it('tells every word for nothing where glucose stands, zeros beside it or not', () => {
  const words = ['NaN', 'n/a', '---', '#N/A', 'null', '-'];
  const body = rows(30, (i, iso) => `${iso.slice(0, 16)},${i % 5 === 0 ? words[i / 5] : 100 + i},0,0`);
  const digest = tell(`Time,Glucose (mg/dL),Insulin (IU),Carbs (g)\n${body}`);
  expect(digest.readings).toHaveLength(24);
  expect(digest.file.faults.map(({ line }) => line)).toEqual([2, 7, 12, 17, 22, 27]);
  expect(digest.notes).toEqual([]);
});

it('reads what a spreadsheet wrote as formulas of text: times, glucose, amounts, words', () => {
  const cell = (text: string) => `"=""${text}"""`;
  const body = rows(12, (i, iso) => `${cell(iso.slice(0, 16))},${cell(String(100 + i))},,,`);
  const digest = tell(
    `Time,Glucose (mg/dL),Insulin (IU),Carbs (g),Exercise (min)\n${body}2026-01-14 12:01,,${cell('4.5')},${cell('36')},${cell('20')}\n`,
  );
  expect(digest.readings).toHaveLength(12);
  expect(digest.notes).toEqual([
    '2026-01-14 12:01 meal 36 g',
    '2026-01-14 12:01 insulin 4.5 IU',
    '2026-01-14 12:01 exercise 20 minutes',
  ]);
});

it.each([
  ['мг/дл', 'mg/dL'],
  ['ммоль/л', 'mmol/L'],
  ['毫摩尔/升', 'mmol/L'],
  ['ミリモル/リットル', 'mmol/L'],
  ['מג/דל', 'mg/dL'],
])('hears a unit named above the table in any script: %s', (word, unit) => {
  const value = (i: number) => (unit === 'mg/dL' ? 100 + i : (5 + i / 10).toFixed(1));
  const wrong = (i: number) => (unit === 'mg/dL' ? (5 + i / 10).toFixed(1) : 100 + i);
  const file = (of: typeof value) => `${word}\nTime,Glucose\n${rows(20, (i, iso) => `${iso.slice(0, 16)},${of(i)}`)}`;
  expect(tell(file(value)).choices.unit).toBe(`file: ${unit}`);
  expect(tell(file(wrong)).issues.filter((issue) => issue.startsWith('refusal unit-contradicts-values'))).toHaveLength(
    1,
  );
});

it("leaves a spreadsheet's mark of text out of times, numbers and words of kinds, and no apostrophe of a sentence", () => {
  const body = rows(12, (i, iso) => `'${iso.slice(0, 16)},'${100 + i},`);
  const digest = tell(
    `Time,Glucose (mg/dL),Note\n${body}'2026-01-14T12:01,,'tis late\n'2026-01-14T12:02,,'5' is a word\n`,
  );
  expect(digest.readings[0]).toBe('2026-01-14 08:00 100 mg/dL');
  expect(digest.notes).toEqual([`2026-01-14 12:01 text "'tis late"`, `2026-01-14 12:02 text "5' is a word"`]);
});

it.each(['Total,640', 'Total,640\nMean,121\nLowest,99', ''])(
  'asks for codes of kinds whatever sum stands below: %s',
  (below) => {
    const codes = [21, 31, 41, 51, 61, 71, 81];
    const body = rows(280, (i, iso) =>
      i % 8 === 7
        ? `${iso.slice(0, 16)},${codes[(i >> 3) % 7]},${3 + (i % 40)}`
        : `${iso.slice(0, 16)},11,${100 + (i % 90)}`,
    );
    const digest = tell(`Time,Record type,Value\n${body}${below}\n`, { unit: 'mg/dL' });
    expect(digest.readings).toEqual([]);
    expect(digest.issues.some((issue) => issue.startsWith('refusal kinds-unknown'))).toBe(true);
  },
);
