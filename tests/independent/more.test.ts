import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { indicesOf } from '../../src/indices/index.ts';
import type { Params } from '../../src/model/quantity.ts';
import type { Compared } from '../../src/model/thenAndNow.ts';
import { BANDS } from '../../src/targets/bands.ts';
import { measuredValue } from '../support/measuredValue.ts';
import { analysedSource, PARTS } from './sources.ts';

/** What more.py worked out from the same files by itself. */
interface Figures {
  from: string;
  to: string;
  set: 'adult' | 'older' | 'pregnancy-type-1';
  mixed: boolean;
  tightRange: number | null;
  gri: number | null;
  modd: number;
  conga: [number, number, number];
  mag: number;
  gvp: number;
  lbgi: number;
  hbgi: number;
  jIndex: number;
  overnight: { date: string; change: number }[];
  brief: { low: string[]; veryLow: string[] };
  rates: { falling: number[]; rising: number[]; steepest: number; fall: number };
  veryHigh: { share: number; unbroken: number; mostInDay: number };
  bedtime: { date: string; mgdl: number }[];
  weekParts: [number | null, number | null][] | null;
  earlier?: {
    shares: Record<string, number>;
    mean: number;
    lows: number;
    highs: number;
    goals?: { then: boolean[]; now: boolean[] };
  };
}

const folder = new URL('./more/', import.meta.url);
const sources = readdirSync(folder).map((name) => name.replace(/\.json$/, ''));

describe.each(sources)('%s, further numbers worked out twice', (source) => {
  const figures: Figures = JSON.parse(readFileSync(new URL(`${source}.json`, folder), 'utf8'));
  const analysis = analysedSource(source, figures, { compare: { with: 'previous' } });
  const { measures, timeline, targets } = analysis;
  const indices = indicesOf(timeline, targets);
  // Uneven steps: the two computations weigh and pair in ways that differ a little.
  const parts = Math.max(PARTS(source), figures.mixed ? 0.03 : 1e-6);
  const near = (found: number, expected: number): void => {
    expect(Math.abs(found - expected), `${found} ${expected}`).toBeLessThanOrEqual(
      parts * Math.max(1, Math.abs(expected)),
    );
  };

  test('tight range and risk index', () => {
    if (figures.tightRange !== null) near(measuredValue(indices.tightRange), figures.tightRange);
    if (figures.gri !== null && indices.gri.ok) near(indices.gri.value.gri, figures.gri);
  });

  test('day-to-day and excursion indices', () => {
    const { conga1, conga2, conga4 } = measuredValue(indices.conga);
    for (const [i, found] of [conga1, conga2, conga4].entries()) near(found, figures.conga[i]!);
    near(measuredValue(indices.modd), figures.modd);
    near(measuredValue(indices.mag), figures.mag);
    near(measuredValue(indices.gvp), figures.gvp);
  });

  test('risk transforms and J-index', () => {
    near(measuredValue(indices.lbgiHbgi).lbgi, figures.lbgi);
    near(measuredValue(indices.lbgiHbgi).hbgi, figures.hbgi);
    near(measuredValue(indices.jIndex), figures.jIndex);
  });

  test('very high, in pregnancy above 200 mg/dL', () => {
    const { share, unbroken, mostInDay } = measuredValue(measures.longHighs);
    near(share, figures.veryHigh.share);
    near(mostInDay, figures.veryHigh.mostInDay);
    // A run of less than 15 minutes is no high.
    if (figures.veryHigh.unbroken >= 15) near(unbroken, figures.veryHigh.unbroken);
  });

  test('bedtime, weekdays and weekend', () => {
    const { bedtime } = measuredValue(measures.fixedTimes);
    expect(bedtime.map(({ date }) => date)).toEqual(figures.bedtime.map(({ date }) => date));
    for (const [i, { mgdl }] of bedtime.entries()) near(mgdl, figures.bedtime[i]!.mgdl);
    expect(measures.weekParts.ok).toBe(figures.weekParts !== null);
    if (!measures.weekParts.ok) return;
    for (const { hour, weekday, weekend } of measures.weekParts.value.hours)
      for (const [i, found] of [weekday, weekend].entries()) {
        const expected = figures.weekParts![hour]![i]!;
        if (found === null || expected === null) expect(found).toBe(expected);
        else near(found, expected);
      }
  });

  test('overnight change', () => {
    if (!measures.overnight.ok) return expect(figures.overnight.length).toBeLessThan(5);
    const { nights } = measures.overnight.value;
    expect(nights.map(({ date }) => date)).toEqual(figures.overnight.map(({ date }) => date));
    for (const [i, { change }] of nights.entries()) near(change, figures.overnight[i]!.change);
  });

  test('days with readings below a limit and no low', () => {
    const paramsOf = (id: string): Params | null => {
      const look = analysis.found.find((one) => one.id === id)?.look;
      return look?.case === 'holds' ? look.params : null;
    };
    const { low, veryLow } = figures.brief;
    const [seen, brief, level2] = [paramsOf('lows-seen'), paramsOf('brief-lows'), paramsOf('very-low')];
    const none = { value: 0 };
    expect(seen?.shortDays ?? brief?.days ?? none).toMatchObject({ value: low.length });
    expect(level2?.briefDays ?? none).toMatchObject({ value: veryLow.length });
    if (brief) expect(brief.dates).toMatchObject({ value: low });
  });

  test('rates', () => {
    const { falling, rising, steepest, largest } = measuredValue(measures.rates);
    near((largest?.from ?? 0) - (largest?.to ?? 0), figures.rates.fall);
    for (const [i, found] of [falling.over1, falling.over2, falling.over3].entries())
      near(found, figures.rates.falling[i]!);
    for (const [i, found] of [rising.over1, rising.over2, rising.over3].entries())
      near(found, figures.rates.rising[i]!);
    near(steepest!.rate, figures.rates.steepest);
  });

  test('the period before', () => {
    const { earlier } = figures;
    if (!earlier) return expect(measures.thenAndNow).toEqual({ ok: false, why: 'no-earlier-readings' });
    const { changes, before, goals } = measuredValue(measures.thenAndNow);
    const of = (name: Compared) => changes.find((each) => each.of === name)!.before;
    const shares = BANDS.map((band) => earlier.shares[band]!);
    near(of('in-range'), shares[2]!);
    near(of('low'), shares[0]! + shares[1]!);
    near(of('mean'), earlier.mean);
    expect(before.days).toBe(timeline.days.length);
    expect(goals.map(({ metBefore }) => metBefore)).toEqual(earlier.goals?.then ?? []);
    expect(goals.map(({ metNow }) => metNow)).toEqual(earlier.goals?.now ?? []);
  });
});
