import { describe, expect, it, test } from 'vitest';
import { lines, numbers, read, refusals, stamp, sugar } from './tables.ts';

/**
 * Doses and grams among readings, told apart by codes that nobody knows, with one or two rows of each: however few, and however
 * short the file, they are asked about or set aside, and never become readings.
 */
interface Shape {
  n: number;
  each: number;
  at: 'early' | 'same';
  kind: string;
  value: string;
  codes: [string, string, string];
  above: string;
  spread: 'middle' | 'ends';
}

function written({ n, each, at, kind, value, codes, above, spread }: Shape): string {
  const minute = at === 'same' ? '0' : '1';
  const put = (i: number): string => {
    const k = spread === 'middle' ? i - Math.floor(n / 2) : i === 0 ? 0 : i === n - 1 ? 1 : -1;
    if (k < 0 || k >= each) return '';
    const when = stamp(i).replace(/.$/, minute);
    return `\n${when},${codes[1]},${[4, 6][k]}\n${when},${codes[2]},${[45, 110][k]}`;
  };
  return `${above}Time,${kind},${value}\n${lines(n, (i) => `${stamp(i)},${codes[0]},${sugar(i)}${put(i)}`)}\n`;
}

const CODES: [string, string, string][] = [
  ['Qx', 'Vb', 'Zk'],
  ['1', '2', '3'],
  ['', 'Vb', 'Zk'],
  ['', '7', '8'],
];

describe.each(['Record type', 'Kind', 'W9'])('few rows of unknown kinds under %s', (kind) => {
  it.each([
    ['Value (mg/dL)', ''],
    ['Value', 'Unit: mg/dL\n'],
    ['Glucose (mg/dL)', ''],
    ['Value', ''],
  ])('are never readings of %s after %j', (value, above) => {
    const wrong: string[] = [];
    for (const n of [3, 5, 12, 200])
      for (const each of [1, 2])
        for (const at of ['early', 'same'] as const)
          for (const codes of CODES)
            for (const spread of ['middle', 'ends'] as const) {
              const shape = { n, each, at, kind, value, codes, above, spread };
              const file = read(written(shape));
              const readings = numbers(file);
              const real = Array.from({ length: n }, (_, i) => sugar(i));
              if (refusals(file).length === 0 && readings.some((one) => one < 50 || !real.includes(one)))
                wrong.push(`${n} rows, ${each} each, ${at}, ${spread}, ${JSON.stringify(codes)}`);
            }
    expect(wrong).toEqual([]);
  });
});

it('asks with every code, and takes the answer', () => {
  const text = written({
    n: 40,
    each: 1,
    at: 'early',
    kind: 'Kind',
    value: 'Value (mg/dL)',
    codes: ['1', '2', '3'],
    above: '',
    spread: 'middle',
  });
  const file = read(text);
  expect(refusals(file)).toEqual(['kinds-unknown']);
  expect(file.issues.find(({ code }) => code === 'kinds-unknown')).toMatchObject({
    expected: 'Kind',
    actual: [
      { is: 'group', word: '1', rows: 40 },
      { is: 'group', word: '2', rows: 1, low: 4, high: 4 },
      { is: 'group', word: '3', rows: 1, low: 45, high: 45 },
    ],
    question: { of: 'layout', field: 'kinds', answer: '{"kinds":{"1":"sensor","2":"…","3":"…"}}' },
  });
  const answered = read(text, { layout: { kinds: { 1: 'sensor', 2: 'insulin', 3: 'carbohydrate' } } });
  expect([refusals(answered), answered.readings.count]).toEqual([[], 40]);
  expect(answered.notes.map(({ kind, text }) => [kind, text])).toEqual([
    ['insulin', '4 mg/dL'],
    ['meal', '45 mg/dL'],
  ]);
});

test('more kinds than anybody would read are asked about too', () => {
  const row = (i: number): string =>
    `${stamp(i)},S1,${sugar(i)}${i % 3 === 1 ? `\n${stamp(i)},N${i},${4 + (i % 40)}` : ''}`;
  expect(new Set(refusals(read(`Time,Record type,Value (mg/dL)\n${lines(300, row)}\n`)))).toEqual(
    new Set(['kinds-unknown']),
  );
});

test('a word that stands on few rows of a year is heard, though no sample meets it', () => {
  const row = (i: number): string => `${stamp(i)},,${sugar(i)}${i === 777 ? `\n${stamp(i)},Vb,6` : ''}`;
  for (const kind of ['Kind', 'W9'])
    expect(numbers(read(`Time,${kind},Value (mg/dL)\n${lines(1500, row)}\n`))).not.toContain(6);
});

describe('what stands beside a reading of its own is harmless', () => {
  const N = 300;
  const all = Array.from({ length: N }, (_, i) => sugar(i));
  it.each<[string, (i: number) => string]>([
    ['Event', (i) => (i === 40 ? 'xyzzy' : i === 200 ? 'plugh' : '')],
    ['Event', (i) => (i === 0 ? 'on' : i === N - 1 ? 'off' : '')],
    ['Event', (i) => (i % 4 === 0 ? `remark ${i}` : '')],
    ['Event', (i) => (i % 50 === 9 ? 'Breakfast' : '')],
    ['Event', (i) => (i === 33 ? 'Rapid insulin' : '')],
    ['Trend', (i) => (i === 100 ? '↑↑' : '→')],
    ['Extra', (i) => (i === 77 ? 'b' : 'a')],
    ['Status', (i) => (i === 77 ? '1' : '0')],
  ])('%s', (name, cell) => {
    const file = read(`Time,Glucose (mg/dL),${name}\n${lines(N, (i) => `${stamp(i)},${sugar(i)},${cell(i)}`)}\n`);
    expect([refusals(file), numbers(file)]).toEqual([[], all]);
  });
});

test('a column that a layout calls the kinds is heard: words that nobody knows are asked about, never passed over', () => {
  const row = (i: number): string =>
    `${stamp(i)},Blorb,${sugar(i)}${i % 20 === 3 ? `\n${stamp(i)},Fnord,${4 + (i % 5)}` : ''}`;
  const text = `Time,W9,Glucose (mg/dL)\n${lines(60, row)}\n`;
  expect(refusals(read(text, { layout: { meanings: { W9: 'kind' } } }))).toEqual(['kinds-unknown']);
  const all = { Blorb: 'sensor', Fnord: 'insulin' };
  const file = read(text, { layout: { meanings: { W9: 'kind' }, kinds: all } });
  expect([refusals(file), file.readings.count, file.notes.length]).toEqual([[], 60, 3]);
});

test('where each kind has columns of its own, a row under a word that nobody knows is told by those', () => {
  const row = (i: number): string =>
    `${stamp(i)},Blorb,${sugar(i)},,,,${i % 20 === 3 ? `\n${stamp(i)},Fnord,,,40,Brisk walk,\n${stamp(i)},Wubble,,,,,Slept badly` : ''}`;
  const text = `Time,W9,Glucose (mg/dL),Insulin (IU),Duration (min),Exercise,Remarks\n${lines(60, row)}\n`;
  for (const layout of [{}, { meanings: { W9: 'kind' as const } }]) {
    const file = read(text, { layout });
    expect([refusals(file), file.readings.count]).toEqual([[], 60]);
    const kinds = file.notes.map(({ kind, minutes, text: words, label }) => [kind, minutes, words ?? label]);
    const three = (of: unknown[]) => [of, of, of];
    expect(kinds.filter(([kind]) => kind === 'exercise')).toEqual(three(['exercise', 40, 'Brisk walk']));
    expect(kinds.filter(([kind]) => kind === 'text')).toEqual(three(['text', undefined, 'Slept badly']));
  }
});
