import { describe, expect, it, test } from 'vitest';
import { numbers, read, refusals, stamp, sugar, times } from './evidence/tables.ts';

const N = 400;
const noted = ({ notes }: ReturnType<typeof read>): string[] =>
  notes.map(({ kind, amount, label, text }) =>
    [kind, amount, label, text].filter((part) => part !== undefined).join(' '),
  );
const json = (value: unknown) => read(JSON.stringify(value), {}, 'log.json');
const all = Array.from({ length: N }, (_, i) => i);

// Programs of people’s own: forms of records are common practice, no source.
describe('lists inside the records of a JSON file', () => {
  const days = [...new Set(all.map((i) => stamp(i).slice(0, 10)))];
  const ofDay = (date: string) => all.filter((i) => stamp(i).startsWith(date));
  test.each(['t', 'time', 'at', 'uhrzeit'])('a day with its readings, doses and meals, clocks under "%s"', (clock) => {
    const file = json({
      unit: 'mg/dL',
      days: days.map((date) => ({
        date,
        readings: ofDay(date).map((i) => ({ [clock]: stamp(i).slice(11), glucose: sugar(i) })),
        insulin: [{ [clock]: '08:15', units: 4 }],
        meals: [{ [clock]: '08:20', carbs: 40, what: 'rice' }],
      })),
    });
    expect(refusals(file)).toEqual([]);
    expect([times(file), numbers(file)]).toEqual([all.map((i) => stamp(i)), all.map(sugar)]);
    expect(noted(file).sort()).toEqual(days.flatMap(() => ['insulin 4', 'meal 40 rice']).sort());
  });
  it('a reading with the doses and meals of its time', () => {
    const file = json(
      all.map((i) => ({
        time: stamp(i),
        glucose_mgdl: sugar(i),
        ...(i % 100 === 9 ? { insulin: [{ units: 4 }, { units: 2 }], meals: [{ carbs: 35 }] } : {}),
      })),
    );
    expect(refusals(file)).toEqual([]);
    expect([times(file), numbers(file)]).toEqual([all.map((i) => stamp(i)), all.map(sugar)]);
    expect(noted(file).sort()).toEqual(
      ['insulin 2', 'insulin 4', 'meal 35'].flatMap((note) => [note, note, note, note]),
    );
  });
  it('a list of words is one remark', () => {
    const file = json(
      all.map((i) => ({ time: stamp(i), glucose_mgdl: sugar(i), notes: i % 100 === 9 ? ['walk', 'cold hands'] : [] })),
    );
    expect(noted(file)).toEqual(Array(4).fill('text walk, cold hands'));
    expect(numbers(file)).toEqual(all.map(sugar));
  });
  it('each row is accounted for, on the line where its record begins', () => {
    const file = read(
      `[\n${all.map((i) => JSON.stringify({ time: stamp(i), glucose_mgdl: sugar(i), meals: [{ carbs: 30 }] })).join(',\n')}\n]`,
      {},
      'log.json',
    );
    expect(file.fates).toHaveLength(2 * N);
    expect([file.readings.line[7], file.notes[7]?.origin.line]).toEqual([9, 9]);
  });
  test.each<[string, (i: number) => object]>([
    ['behind', (i) => ({ t: stamp(i), id: `${1_234_567_000 + i}`, glucose: sugar(i) })],
    ['before', (i) => ({ id: `${1_234_567_000 + i}`, t: stamp(i), glucose: sugar(i) })],
    ['a number', (i) => ({ t: stamp(i), ref: 1_234_567_000 + i, glucose: sugar(i) })],
    ['of milliseconds', (i) => ({ ref: 1_768_374_000_000 + i, at: stamp(i), glucose: sugar(i) })],
  ])('a number that looks like seconds since 1970 is no time beside one: %s', (_, row) => {
    const file = json({ unit: 'mg/dL', list: [{ who: 'a', readings: all.map(row) }] });
    expect(refusals(file)).toEqual([]);
    expect([times(file), numbers(file)]).toEqual([all.map((i) => stamp(i)), all.map(sugar)]);
  });
  it('a number of a dose does not take the place of the time that it stands in', () => {
    const file = json(
      all.map((i) => ({
        time: stamp(i),
        glucose: sugar(i),
        ...(i === 9 ? { insulin: [{ id: 1_234_567_890, units: 4 }] } : {}),
      })),
    );
    expect(times(file)).toEqual(all.map((i) => stamp(i)));
    expect(file.notes.map(({ kind, amount, wall }) => [kind, amount, wall])).toEqual([
      ['insulin', 4, Date.parse(`${stamp(9).replace(' ', 'T')}Z`)],
    ]);
  });
  test.each<[string, (i: number) => object]>([
    ['two whole ones', (i) => ({ t: stamp(i), w: stamp(i + 12), glucose: sugar(i) })],
    ['a date and a clock', (i) => ({ d: stamp(i).slice(0, 10), h: stamp(i).slice(11), glucose: sugar(i) })],
  ])('of two times under names nobody knows none covers the other: %s', (_, row) => {
    const file = json({ unit: 'mg/dL', list: [{ who: 'a', readings: all.map(row) }] });
    if (refusals(file).length === 0) expect(times(file)).toEqual(all.map((i) => stamp(i)));
    else expect(file.readings.count).toBe(0);
  });
});
