import { describe, expect, it } from 'vitest';
import { analyse } from '../../src/analyse.ts';
import type { Settings } from '../../src/model/settings.ts';
import { excerpt, held, inputsIn, rowsAddUp } from './stories.ts';

/**
 * Open data: Alsuhaymi et al. 2025, doi 10.1038/s41597-025-05695-1 (CC BY 4.0), an excerpt. Counts of lines, pairs and
 * dates below were made by hand from the files, not by the program.
 */
const settings: Settings = {
  targets: 'adult',
  unit: 'mmol/L',
  zone: 'Europe/London',
  today: '2024-05-01',
  period: { days: 16 },
  person: {},
};
const person = (id: string) => analyse(inputsIn(excerpt, new RegExp(`-${id}\\.csv$`)), settings, 'test');

const table = [
  {
    id: '2314',
    lines: 2144 + 100 + 65 + 14 + 4 + 772,
    used: 2144,
    from: '2023-11-06',
    to: '2023-11-20',
    days: 15,
    interval: 15,
  },
  { id: '2320', lines: 4305 + 49 + 77 + 3, used: 4295, from: '2023-12-13', to: '2023-12-27', days: 15, interval: 5 },
  { id: '2404', lines: 1688 + 63 + 71 + 3, used: 1688, from: '2024-03-24', to: '2024-04-08', days: 16, interval: 15 },
];

describe.each(table)('person $id', ({ id, lines, used, from, to, days, interval }) => {
  const analysis = held(person(id));

  it('accounts for every line', () => {
    expect(rowsAddUp(analysis.ledger)).toBe(true);
    expect(analysis.ledger.rows).toBe(lines);
    expect(analysis.ledger.used).toBe(used);
  });
  it('reads the days day first, as the values show', () => {
    const { timeline } = analysis;
    expect([timeline.allDays[0], timeline.allDays.at(-1), timeline.allDays.length]).toEqual([from, to, days]);
    expect(timeline.interval).toBe(interval);
    const orders = analysis.files.flatMap((file) => file.choices).filter((choice) => choice.id === 'date-order');
    for (const choice of orders) expect(choice.value).toBe('day-first');
  });
  it('has meals and insulin as notes', () => {
    const kinds = new Set(analysis.timeline.notes.map((note) => note.kind));
    expect(kinds.has('meal') && kinds.has('insulin')).toBe(true);
  });
});

describe('single facts', () => {
  it('2320: five times with two values are used by neither', () => {
    expect(held(person('2320')).ledger.setAside).toBeGreaterThanOrEqual(10);
  });
  it('2404: a meal in the year 2204 is set aside, not moved', () => {
    const analysis = held(person('2404'));
    expect(analysis.ledger.setAside).toBeGreaterThanOrEqual(1);
    expect(analysis.timeline.notes.some((note) => note.label?.includes('Aubergine Sandwich'))).toBe(false);
  });
  it('2404: the night of 31 March 2024 has 23 hours and no reading in the hour that was not', () => {
    const { timeline } = held(person('2404'));
    const day = timeline.days.find((candidate) => candidate.date === '2024-03-31');
    expect(day?.minutes).toBe(1380);
    const minutes = Array.from(timeline.readings.minute.subarray(day!.from, day!.to));
    expect(minutes.filter((minute) => minute >= 60 && minute < 120)).toEqual([]);
    // 00:56 and 02:11 on the wall are fifteen minutes apart.
    const i = day!.from + minutes.indexOf(56);
    expect(timeline.readings.at[i + 1]! - timeline.readings.at[i]!).toBe(15 * 60_000);
  });
  it('does not guess the unit: without being told, it asks or finds it in the values', () => {
    const { unit: _, ...untold } = settings;
    const result = analyse(inputsIn(excerpt, /-2404\.csv$/), untold, 'test');
    const asked = !result.ok && result.issues.some((issue) => issue.question?.of === 'unit');
    expect(asked || (result.ok && result.timeline.unit === 'mmol/L')).toBe(true);
  });
});
