import { MINUTE_MS } from '../time/calendar.ts';
import type { SpellRange } from './spells.ts';
import { slackOf } from './steps.ts';

/** Above this share of uneven steps readings are weighted by time instead of counted (rule ours). */
const UNEVEN_SHARE = 0.05;

/**
 * Whether steps are too uneven to count readings: spells of different intervals, or steps that are no whole multiple
 * of the spell's interval. A missing reading makes a step of two intervals, which is not uneven.
 */
export function isMixed(at: Float64Array, spells: SpellRange[], rule: number): boolean {
  if (new Set(spells.map(({ interval }) => interval)).size > 1) return true;
  let steps = 0;
  let uneven = 0;
  for (const { from, to, interval } of spells) {
    const slack = slackOf(interval);
    for (let i = from + 1; i < to; i++) {
      const step = (at[i]! - at[i - 1]!) / MINUTE_MS;
      if (step > rule) continue;
      steps++;
      const whole = Math.max(1, Math.round(step / interval)) * interval;
      if (Math.abs(step - whole) > slack) uneven++;
    }
  }
  return uneven > UNEVEN_SHARE * steps;
}

/**
 * Minutes each reading stands for. Even steps: the spell's interval, as its regular steps really are on average, or
 * the step itself where another reading follows sooner. Mixed: min(time to the next reading, 1.5 intervals)
 * (clinical default). Either way the minutes of a stretch never exceed the time it lasts plus one interval.
 */
export function fillWeights(weight: Float64Array, at: Float64Array, spells: SpellRange[], mixed: boolean): void {
  for (const { from, to, interval } of spells) {
    const usual = mixed ? interval : meanRegularStep(at, from, to, interval);
    const shortest = mixed ? 0 : interval - slackOf(interval);
    const most = mixed ? 1.5 * interval : usual;
    for (let i = from; i < to; i++) {
      const step = i + 1 < at.length ? (at[i + 1]! - at[i]!) / MINUTE_MS : usual;
      weight[i] = mixed ? Math.min(step, most) : step < shortest ? step : usual;
    }
  }
}

function meanRegularStep(at: Float64Array, from: number, to: number, interval: number): number {
  const slack = slackOf(interval) * MINUTE_MS;
  const usual = interval * MINUTE_MS;
  let sum = 0;
  let n = 0;
  for (let i = from + 1; i < to; i++) {
    const step = at[i]! - at[i - 1]!;
    if (Math.abs(step - usual) > slack) continue;
    sum += step;
    n++;
  }
  return n === 0 ? interval : sum / n / MINUTE_MS;
}
