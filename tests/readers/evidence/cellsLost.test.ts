import { describe, expect, it, test } from 'vitest';
import { lines, numbers, read, refusals, stamp, sugar } from './tables.ts';

const N = 60;
const ALL = Array.from({ length: N }, (_, i) => sugar(i));
const aside = (file: ReturnType<typeof read>, code: string): (number | undefined)[] =>
  file.issues.filter((issue) => issue.code === code).map(({ origin }) => origin?.line);

describe('rows one cell short of a header with a cell that names nothing', () => {
  const head = 'Time,Glucose (mg/dL),,Insulin (IU),Carbs (g),Remark';
  const row = (i: number, cells: string): string => `${stamp(i)},${sugar(i)},${cells}`;

  it('are read one place further left where all rows are: no gram becomes a dose, no remark is lost', () => {
    const text = `${head}\n${lines(N, (i) => row(i, i === 7 ? '4,,' : i === 9 ? ',45,' : i === 11 ? ',,walked home' : ',,'))}\n`;
    const file = read(text);
    expect(numbers(file)).toEqual(ALL);
    expect(file.notes.map(({ kind, amount, text }) => [kind, amount ?? text])).toEqual([
      ['insulin', 4],
      ['meal', 45],
      ['text', 'walked home'],
    ]);
  });

  it('are read so before the values as well', () => {
    const text = `Time,,Glucose (mg/dL),Remark\n${lines(N, (i) => `${stamp(i)},${sugar(i)},${i === 11 ? 'tea' : ''}`)}\n`;
    const file = read(text);
    expect(numbers(file)).toEqual(ALL);
    expect(file.notes.map(({ text }) => text)).toEqual(['tea']);
  });

  it('are told with their line where the other rows are whole', () => {
    const text = `${head}\n${lines(N, (i) => (i === 9 ? row(i, '4,45,') : row(i, ',,,')))}\n`;
    const file = read(text);
    expect(numbers(file)).toEqual(ALL.filter((_, i) => i !== 9));
    expect([file.notes, aside(file, 'row-too-short')]).toEqual([[], [11]]);
  });

  it('are whole where nothing stands under that cell, or a column without a name is filled', () => {
    const trimmed = read(`${head}\n${lines(N, (i) => row(i, ',4,'))}\n`);
    expect(trimmed.notes.map(({ kind, amount }) => [kind, amount]).slice(0, 1)).toEqual([['insulin', 4]]);
    const index = `,Time,Glucose (mg/dL)\n${lines(N, (i) => `${i},${stamp(i)},${sugar(i)}`)}\n`;
    expect(numbers(read(index))).toEqual(ALL);
  });
});

describe('words under a column without any name', () => {
  test.each([
    ['a header with an empty cell', 'Time,Glucose (mg/dL),\n'],
    ['no header at all', 'Unit: mg/dL\n'],
  ])('are remarks: %s', (_, head) => {
    const file = read(
      `${head}${lines(N, (i) => `${stamp(i)},${sugar(i)},${i === 5 ? 'late bus' : i === 20 ? 'soup' : ''}`)}\n`,
    );
    expect([refusals(file), numbers(file)]).toEqual([[], ALL]);
    expect(file.notes.map(({ kind, text }) => [kind, text])).toEqual([
      ['text', 'late bus'],
      ['text', 'soup'],
    ]);
  });
  it('of states that come again and again are none', () => {
    const file = read(`Time,Glucose (mg/dL),\n${lines(N, (i) => `${stamp(i)},${sugar(i)},${i % 3 ? 'ok' : 'so'}`)}\n`);
    expect([numbers(file), file.notes]).toEqual([ALL, []]);
  });
});

describe('a row that is too long', () => {
  it('is told, though commas of its date part it as the header is', () => {
    const day = (i: number): string => `Wed, 14 Jan 2026 ${stamp(i).slice(11)}`;
    const text = `Time;Glucose (mg/dL);Who\n${lines(N, (i) => `${day(i)};${i === 8 ? '100,5' : `${sugar(i)},5`};Ada${i === 8 ? ';7;7' : ''}`)}\n`;
    const file = read(text);
    expect([file.readings.count, aside(file, 'row-too-long')]).toEqual([N - 1, [10]]);
  });
  it('is told without a header as well, and makes no column', () => {
    for (const unit of ['', ' mg/dL']) {
      const text = `Unit: mg/dL\n${lines(N, (i) => `${stamp(i)},${sugar(i)}${unit}${i === 8 ? ',7,7' : ''}`)}\n`;
      const file = read(text);
      expect(numbers(file)).toEqual(ALL.filter((_, i) => i !== 8));
      expect(aside(file, 'row-too-long')).toEqual([10]);
    }
  });
});

test('a row cut off behind its date is told with its line, beside world time too', () => {
  const part = (i: number): number => ((7 * 60 + 5 * i) % 1440) / 1440;
  const utc = (i: number): string => stamp(i - 24);
  for (const world of [true, false]) {
    const head = `Date,Time of day${world ? ',Time (UTC)' : ''},Glucose (mg/dL)`;
    const text = `${head}\n${lines(N, (i) => `14.01.2026,${part(i)}${world ? `,${utc(i)}` : ''},${sugar(i)}`)}\n14.01.2026`;
    const file = read(text);
    expect([file.readings.count, file.fates.at(-1)]).toEqual([N, 'set-aside']);
    expect(aside(file, 'no-value')).toEqual([N + 2]);
  }
});

test('hours counted to 24 are mended beside world time too', () => {
  const own = (i: number): string => stamp(i, 15).replace(/ 00:/, ' 24:');
  const world = (i: number): string => stamp(i - 8, 15);
  for (const order of [0, 1]) {
    const cells = (i: number): string => (order ? [world(i), own(i)] : [own(i), world(i)]).join(',');
    const head = order ? 'Time (UTC),Time' : 'Time,Time (UTC)';
    const file = read(`${head},Glucose (mg/dL)\n${lines(240, (i) => `${cells(i)},${sugar(i)}`)}\n`);
    expect([refusals(file), file.readings.count]).toEqual([[], 240]);
    expect(new Set(file.readings.offset)).toEqual(new Set([120]));
    expect([...file.readings.wall].map((wall) => new Date(wall).toISOString().slice(0, 16).replace('T', ' '))).toEqual(
      Array.from({ length: 240 }, (_, i) => stamp(i, 15)),
    );
  }
});
