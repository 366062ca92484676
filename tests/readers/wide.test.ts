import { describe, expect, it } from 'vitest';
import { tell } from './digest.ts';

const clocks = Array.from({ length: 48 }, (_, i) => `${String(i >> 1).padStart(2, '0')}:${i % 2 ? '30' : '00'}`);
const day = (date: string, from: number): string => `${date};${clocks.map((_, i) => from + i).join(';')}`;

describe('one row a day, one column a clock time', () => {
  const text = `Sensor glucose (mg/dL)\nDate;${clocks.join(';')}\n${day('13/03/2026', 90)}\n${day('14/03/2026', 120)}\n`;
  it('is read with every value at its time', () => {
    const digest = tell(text);
    expect(digest.file.kind).toBe('wide-table');
    expect(digest.readings).toHaveLength(96);
    expect(digest.readings[1]).toBe('2026-03-13 00:30 91 mg/dL');
    expect(digest.readings[95]).toBe('2026-03-14 23:30 167 mg/dL');
    expect(digest.fates).toBe('iiuu');
    expect(digest.choices['date-order']).toBe('file: day-first');
    expect([...digest.file.readings.line.subarray(0, 2)]).toEqual([3, 3]);
  });

  it('names the line of a value that cannot be used, and leaves empty cells out', () => {
    const digest = tell(text.replace(';91;', ';x;').replace(';92;', ';;'));
    expect(digest.readings).toHaveLength(94);
    expect(digest.issues).toEqual(['warning value-not-a-number 3']);
  });

  it('is not taken for glucose when nothing says so', () => {
    const digest = tell(text.replace('Sensor glucose (mg/dL)', 'Steps'));
    expect(digest.readings).toEqual([]);
    expect(digest.file.issues.some((issue) => issue.level === 'refusal')).toBe(true);
  });
});

/** A row in which a date is carried and amounts have a point begins like a row of hours: no row of readings is a header. */
describe('numbers with a point beside a time of day', () => {
  const head = 'Date;Time;Sensor glucose (mmol/L);Rapid (IU);Long (IU);Carbohydrate (g)';
  const carried = (clock: (i: number) => string, amounts: (i: number) => string): string =>
    [
      head,
      ...Array.from(
        { length: 60 },
        (_, i) => `${i % 30 === 0 ? '2026-01-14' : ''};${clock(i)};${(5 + (i % 9) / 10).toFixed(2)};${amounts(i)}`,
      ),
    ].join('\n');
  const colon = (i: number): string => `${10 + Math.floor(i / 12)}:${String((i % 12) * 5).padStart(2, '0')}`;
  it.each<[string, (i: number) => string, (i: number) => string]>([
    ['that fall', colon, (i) => (i % 7 === 0 ? '2.40;1.50;1.30' : ';;')],
    ['that rise', colon, (i) => (i % 7 === 0 ? '8.4;12.30;15.45' : ';;')],
    ['a clock with a point too', (i) => colon(i).replace(':', '.'), (i) => (i % 7 === 0 ? '9.1;12.30;15.45' : ';;')],
    ['in every row', colon, () => '6.45;12.30;15.45'],
  ])('%s', (_, clock, amounts) => {
    const { file } = tell(carried(clock, amounts).replaceAll(';', '\t'));
    expect([file.kind, file.readings.count, file.issues.map(({ code }) => code)]).toEqual(['delimited', 60, []]);
  });
  it.each(['.', ':', 'h'])('hours of a header may have the sign %s', (sign) => {
    const hours = clocks.map((clock) => clock.replace(':', sign));
    const rows = ['13/01/2026', '14/01/2026'].map((date) => `${date};${hours.map((__, i) => 100 + i).join(';')}`);
    const digest = tell(`Sensor glucose (mg/dL)\nDate;${hours.join(';')}\n${rows.join('\n')}\n`);
    expect([digest.readings.length, digest.issues]).toEqual([96, []]);
  });
});
