import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { measure, measures } from '../../src/measures/index.ts';
import type { Timeline } from '../../src/model/timeline.ts';
import { targetSets } from '../../src/targets/index.ts';
import { timelineOf } from '../support/timeline.ts';

const words = JSON.parse(readFileSync(new URL('../../templates/words/en.json', import.meta.url), 'utf8'));

/** A timeline whose readings are all gone. */
function emptied(timeline: Timeline): Timeline {
  const none = new Float64Array(0);
  const readings = {
    count: 0,
    at: none,
    mgdl: none,
    native: none,
    unit: new Uint8Array(0),
    limit: new Int8Array(0),
    day: new Uint16Array(0),
    minute: new Uint16Array(0),
    weight: none,
  };
  return { ...timeline, readings, days: timeline.days.map((day) => ({ ...day, from: 0, to: 0 })) };
}

describe('the registry', () => {
  const units = Object.entries(measures);

  test.each(units)('%s: id, source and words', (id, unit) => {
    expect(unit.id).toBe(id);
    expect(unit.source.length).toBeGreaterThan(0);
    expect(words.measures[id]).toEqual({ name: expect.any(String), definition: expect.any(String) });
  });

  test('every target set and every reason has words', () => {
    for (const id of Object.keys(targetSets))
      expect(words.targets[id]).toEqual({ name: expect.any(String), note: expect.any(String) });
    const reasons = [
      'no-readings',
      'too-few-readings',
      'too-few-days',
      'too-few-nights',
      'not-for-these-targets',
      'bound-unknown',
      'not-asked',
      'none-noted',
      'no-pairs',
      'no-earlier-readings',
      'failed',
    ];
    for (const why of reasons) expect(words.why[why]).toEqual(expect.any(String));
  });
});

/** Nobody asked, or nobody wrote anything down: no gap in the readings. */
const QUIET: Record<string, string> = {
  labA1c: 'not-asked',
  thenAndNow: 'not-asked',
  lastTime: 'not-asked',
  visitByVisit: 'not-asked',
  medicinesNoted: 'none-noted',
  remarks: 'none-noted',
  insulinNoted: 'none-noted',
  pregnancy: 'not-asked',
};

describe('measuring', () => {
  const timeline = timelineOf({ value: (minute, day) => 90 + (minute % 240) + day });

  test('gives every measure, and the same twice', () => {
    const once = measure(timeline, targetSets.adult);
    expect(Object.keys(once)).toEqual(Object.keys(measures));
    for (const [id, measured] of Object.entries(once)) {
      const quiet = QUIET[id] ?? (id === 'fingersticks' || id === 'alarms' ? 'none-noted' : null);
      if (quiet !== null) expect([id, measured]).toEqual([id, { ok: false, why: quiet }]);
      else expect([id, measured.ok]).toEqual([id, true]);
    }
    expect(measure(timeline, targetSets.adult)).toEqual(once);
  });

  test('without readings says so, everywhere', () => {
    for (const targets of Object.values(targetSets)) {
      for (const [id, measured] of Object.entries(measure(emptied(timeline), targets))) {
        expect([id, measured]).toEqual([id, { ok: false, why: 'no-readings' }]);
      }
    }
  });

  test('one reading is enough for some and throws nowhere', () => {
    const one = measure(timelineOf({ days: 1, value: (minute) => (minute === 600 ? 100 : null) }), targetSets.adult);
    const states = Object.entries(one).map(([id, measured]) => [id, measured.ok ? 'told' : measured.why]);
    expect(Object.fromEntries(states)).toEqual({
      coverage: 'told',
      lowStories: 'told',
      mean: 'told',
      sd: 'too-few-readings',
      cv: 'too-few-readings',
      gmi: 'too-few-readings',
      timeInBands: 'told',
      modalDay: 'too-few-days',
      hourly: 'told',
      lows: 'told',
      highs: 'told',
      longHighs: 'told',
      nights: 'told',
      daily: 'told',
      windows: 'too-few-days',
      dawnRise: 'too-few-nights',
      rebounds: 'told',
      notedBefore: 'told',
      remarks: 'none-noted',
      cvRange: 'too-few-days',
      curveRanges: 'too-few-days',
      labA1c: 'not-asked',
      overnight: 'too-few-nights',
      rates: 'too-few-readings',
      sensors: 'told',
      oddStretches: 'told',
      pressedLows: 'told',
      fingersticks: 'none-noted',
      medicinesNoted: 'none-noted',
      alarms: 'none-noted',
      thenAndNow: 'not-asked',
      lastTime: 'not-asked',
      visitByVisit: 'not-asked',
      noteLog: 'told',
      meals: 'told',
      exercise: 'told',
      corrections: 'told',
      comparisons: 'told',
      fixedTimes: 'too-few-readings',
      weekParts: 'too-few-days',
      lowsLined: 'told',
      insulinNoted: 'none-noted',
      pregnancy: 'not-asked',
    });
  });

  test('a measure that breaks is failed, and takes no other with it', () => {
    const broken = { ...timeline, gaps: null } as unknown as Timeline;
    const measured = measure(broken, targetSets.adult);
    expect(measured.coverage).toEqual({ ok: false, why: 'failed' });
    expect(measured.mean.ok).toBe(true);
  });

  test('no number in it is NaN or infinite', () => {
    const odd = timelineOf({
      value: (minute, day) =>
        day % 3 === 0 ? { native: Number.NaN, limit: minute < 720 ? -1 : 1 } : 100 + (minute % 300),
    });
    for (const targets of Object.values(targetSets)) {
      const walk = (value: unknown): void => {
        if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
        else if (value !== null && typeof value === 'object') Object.values(value).forEach(walk);
      };
      walk(measure(odd, targets));
    }
  });
});
