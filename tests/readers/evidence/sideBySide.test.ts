import { describe, expect, it, test } from 'vitest';
import { numbers, read, refusals, START, stamp, sugar, times } from './tables.ts';

const N = 300;
const noted = ({ notes }: ReturnType<typeof read>): string[] =>
  notes.map(({ kind, amount, label, wall }) =>
    `${new Date(wall).toISOString().slice(0, 16)} ${kind} ${amount} ${label ?? ''}`.trim(),
  );
const minutes = (n: number): string => new Date(START + n * 60_000).toISOString().slice(0, 16);
/** Meals and doses at times that have nothing to do with the rows they stand in. */
const MEALS = [25, 290, 530, 771, 1013];
const DOSES = [15, 281, 522, 760];
const at = (list: number[], i: number): string => (list[i] === undefined ? '' : minutes(list[i]).replace('T', ' '));
const side = (i: number): string =>
  `${at(MEALS, i)},${i < MEALS.length ? `soup,${30 + i}` : ','},,${at(DOSES, i)},${i < DOSES.length ? 4 + i : ''}`;
const WANTED = [
  ...MEALS.map((n, i) => `${minutes(n)} meal ${30 + i} soup`),
  ...DOSES.map((n, i) => `${minutes(n)} insulin ${4 + i} rapid`),
].sort();

describe('tables side by side', () => {
  test.each(['When', 'Time', 'Eaten at', 'Zeitpunkt', 'Hora de comer'])(
    'notes keep the times of their own table, under %s',
    (name) => {
      const head = `Time,Glucose (mg/dL),,${name},Food,Carbs (g),,Taken at,Rapid insulin (U)`;
      const rows = Array.from({ length: N }, (_, i) => `${stamp(i)},${sugar(i)},,${side(i)}`);
      const file = read(`${head}\n${rows.join('\n')}\n`);
      expect(refusals(file)).toEqual([]);
      expect(numbers(file)).toEqual(rows.map((_, i) => sugar(i)));
      expect(times(file)).toEqual(rows.map((_, i) => stamp(i)));
      expect(noted(file).sort()).toEqual(WANTED);
      expect(file.columns?.find((column) => column.name === 'Taken at')?.role).toBe('time');
    },
  );
  it('in a long table, where no sample of the rows meets them', () => {
    const head = 'Time,Glucose (mg/dL),,Eaten at,Food,Carbs (g),,Taken at,Rapid insulin (U)';
    const rows = Array.from({ length: 4000 }, (_, i) => `${stamp(i)},${sugar(i)},,${side(i < 3990 ? 99 : i - 3990)}`);
    expect(noted(read(`${head}\n${rows.join('\n')}\n`)).sort()).toEqual(WANTED);
  });
  it('and rows below the end of the first table are read', () => {
    const head = 'Time,Glucose (mg/dL),,When,Food,Carbs (g),,Taken at,Rapid insulin (U)';
    const rows = Array.from({ length: 60 }, (_, i) => `${i < 57 ? `${stamp(i)},${sugar(i)}` : ','},,${side(i - 55)}`);
    const file = read(`${head}\n${rows.join('\n')}\n`);
    expect(file.readings.count).toBe(57);
    expect(noted(file).sort()).toEqual(WANTED);
  });
  it('a time that cannot be read is told, and its note set aside', () => {
    const head = 'Time,Glucose (mg/dL),,When,Food,Carbs (g)';
    const cells = ['2026-01-14 09:12,soup,30', 'noonish,rice,45', '2026-01-14 18:40,fish,20', ',bread,15'];
    const rows = Array.from({ length: 40 }, (_, i) => `${stamp(i)},${sugar(i)},,${cells[i] ?? ',,'}`);
    const file = read(`${head}\n${rows.join('\n')}\n`);
    expect(noted(file)).toEqual(['2026-01-14T09:12 meal 30 soup', '2026-01-14T18:40 meal 20 fish']);
    expect(file.issues.filter(({ level }) => level === 'warning').map(({ code }) => code)).toEqual(
      expect.arrayContaining(['time-unreadable', 'no-time']),
    );
  });
  it('a second form of the row’s own time changes nothing', () => {
    const rows = Array.from(
      { length: N },
      (_, i) => `${stamp(i)},${sugar(i)},${i % 50 === 7 ? `${stamp(i)},soup,30` : ',,'}`,
    );
    const file = read(`Time,Glucose (mg/dL),When,Food,Carbs (g)\n${rows.join('\n')}\n`);
    expect(noted(file)[0]).toBe(`${stamp(7).replace(' ', 'T')} meal 30 soup`);
  });
});
