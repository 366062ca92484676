import { describe, expect, test } from 'vitest';
import type { LocalDate } from '../../src/model/glucose.ts';
import { visitOf } from '../../src/papers/visitOf.ts';
import { analyseStory, held } from './stories.ts';

const fortnight = { period: { from: '2026-04-27', to: '2026-05-10' } };
const alone = held(analyseStory('evening-exercise', fortnight));
const compared = held(analyseStory('evening-exercise', { ...fortnight, compare: { with: 'previous' } }));

describe('an invented story beside the fortnight before it', () => {
  const found = compared.measures.thenAndNow;

  test('compares 14 days with 14', () => {
    expect(found.ok && [found.value.before, found.value.now]).toMatchObject([
      { from: '2026-04-13', to: '2026-04-26', days: 14 },
      { from: '2026-04-27', to: '2026-05-10', days: 14 },
    ]);
  });

  test('says of both what each says alone', () => {
    const before = held(analyseStory('evening-exercise', { period: { from: '2026-04-13', to: '2026-04-26' } }));
    for (const [side, analysis] of [
      ['before', before],
      ['now', alone],
    ] as const) {
      const { timeInBands, mean, lows, cv } = analysis.measures;
      const of = (name: string) => found.ok && found.value.changes.find((each) => each.of === name)![side];
      expect(of('in-range')).toBeCloseTo(timeInBands.ok ? timeInBands.value.exclusive['in-range'].value : NaN, 9);
      expect(of('low')).toBeCloseTo(timeInBands.ok ? timeInBands.value.cumulative.low.value : NaN, 9);
      expect(of('mean')).toBeCloseTo(mean.ok ? mean.value.mgdl.value : NaN, 9);
      expect(of('lows')).toBeCloseTo(lows.ok ? lows.value.perWeek.value : NaN, 9);
      expect(of('cv')).toBeCloseTo(cv.ok ? cv.value : NaN, 1);
    }
  });

  test('changes nothing else', () => {
    const { thenAndNow: _, ...others } = compared.measures;
    const { thenAndNow: __, ...asBefore } = alone.measures;
    expect(others).toEqual(asBefore);
    expect(compared.ledger).toEqual(alone.ledger);
  });

  test('gives the same from a file of the earlier visit', () => {
    const visit = held(analyseStory('evening-exercise', { period: { from: '2026-04-13', to: '2026-04-26' } }));
    const compare = { with: 'visits' as const, visits: [visitOf(visit, 'visit.json', null)] };
    const again = held(analyseStory('evening-exercise', { ...fortnight, compare })).measures.thenAndNow;
    expect(again.ok && found.ok && again.value.changes).toEqual(found.ok && found.value.changes);
  });

  test('is split by a change', () => {
    const compare = { with: 'change' as const, date: '2026-05-04' as LocalDate, text: 'new routine' };
    const split = held(analyseStory('evening-exercise', { ...fortnight, compare })).measures.thenAndNow;
    expect(split.ok && split.value).toMatchObject({
      text: 'new routine',
      before: { to: '2026-05-03', days: 7 },
      now: { from: '2026-05-04', days: 7 },
    });
    expect(split.ok && new Set(split.value.changes.map(({ why }) => why))).toEqual(new Set(['few-days']));
  });

  test('cannot be told where there is nothing before', () => {
    const first = held(analyseStory('steady-fortnight', { compare: { with: 'previous' } }));
    expect(first.measures.thenAndNow).toEqual({ ok: false, why: 'no-earlier-readings' });
    const look = first.found.find(({ id }) => id === 'changed-lows')!.look;
    expect(look).toEqual({ case: 'untold', why: 'no-earlier-readings' });
  });
});

test('in the invented steady fortnight one low of January 20 looks like pressure, and all 12 stay counted', () => {
  const { pressedLows, lows } = held(analyseStory('steady-fortnight')).measures;
  expect(pressedLows.ok && pressedLows.value.list.map(({ low }) => low.date)).toEqual(['2026-01-20']);
  expect(lows.ok && lows.value.list).toHaveLength(12);
});
