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
