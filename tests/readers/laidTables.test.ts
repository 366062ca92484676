import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rows, tell } from './digest.ts';

const READINGS = rows(30, (i, iso) => `${iso.slice(0, 16)},${i < 15 ? 100 + i : (5 + i / 10).toFixed(1)}`);
const NOTES = 'Time,Insulin (IU),Carbs (g)\n2026-01-14T12:01,6.5,\n2026-01-14T13:01,7,40\n';

describe('a table that a layout does not speak of, below one that it lays out', () => {
  const laid = (unit: string) => ({ headerLine: 1, unit, columns: { Time: 'time', Glucose: 'sensor' } });
  const later = (firstLine: number) => ({
    headerLine: 0,
    firstLine,
    unit: 'mmol/L',
    columns: { '#1': 'time', '#2': 'sensor' },
  });

  it('is read by its own names: no dose becomes a reading', () => {
    fc.assert(
      fc.property(fc.boolean(), fc.integer({ min: 0, max: 2 }), (parts, blank) => {
        const file = `Time,Glucose\n${READINGS}${'\n'.repeat(blank)}${NOTES}`;
        const layout = parts ? { tables: [laid('mg/dL'), later(17)] } : laid('mmol/L');
        const digest = tell(file, { layout });
        expect(digest.notes).toEqual([
          '2026-01-14 12:01 insulin 6.5 IU',
          '2026-01-14 13:01 meal 40 g',
          '2026-01-14 13:01 insulin 7 IU',
        ]);
        expect(digest.readings.filter((line) => line.includes('12:01') || line.includes('13:01'))).toEqual([]);
        if (parts) expect(digest.readings).toHaveLength(30);
      }),
    );
  });

  it('is none where the header only stands there again, or where places are given for the whole file', () => {
    const [head, body] = ['Time,Glucose', rows(20, (i, iso) => `${iso.slice(0, 16)},${100 + i}`)];
    const again = tell(`${head}\n${body}${head}\n2026-01-14T12:01,99\n`, { layout: laid('mg/dL') });
    expect(again.readings).toHaveLength(21);
    const places = tell(`Time,Carbs (g)\n2026-01-14T12:01,7\n${head}\n${body}`, {
      layout: { unit: 'mg/dL', columns: { '#1': 'time', '#2': 'sensor' } },
    });
    expect(places.readings).toHaveLength(20);
  });

  it('settles as a layout that reads the same', () => {
    const digest = tell(`Time,Glucose\n${READINGS}${NOTES}`, { layout: { tables: [laid('mg/dL'), later(17)] } });
    const again = tell(`Time,Glucose\n${READINGS}${NOTES}`, { layout: digest.file.layout });
    expect([again.readings, again.notes]).toEqual([digest.readings, digest.notes]);
  });
});
