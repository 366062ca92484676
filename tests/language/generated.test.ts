import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { FindingId } from '../../src/findings/index.ts';
import { speakerOf } from '../../src/language/index.ts';
import type { MgPerDl } from '../../src/model/glucose.ts';
import type { Measures } from '../../src/model/measures.ts';
import type { TargetSet } from '../../src/model/targets.ts';
import { targetSets } from '../../src/targets/index.ts';
import { lookAll, topics } from '../../src/topics/index.ts';
import { english } from '../support/english.ts';
import * as episode from '../support/examples/episodes.ts';
import * as like from '../support/examples/measures.ts';
import * as trust from '../support/examples/trust.ts';
import { measuresWith } from '../support/measures.ts';
import { grade, sentences, words } from '../support/readability.ts';
import { contar, faltas, frases, inflesz, palabras } from '../support/spanish.ts';
import { wordsOf } from '../support/story.ts';
import { faults } from '../support/wordLists.ts';

const share = fc.double({ min: 0, max: 1, noNaN: true });
const days = fc.integer({ min: 1, max: 28 });
const glucose = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((value) => value as MgPerDl);

const low = fc.record({
  startMinute: fc.integer({ min: 0, max: 1439 }),
  minutes: fc.integer({ min: 15, max: 400 }),
  level: fc.constantFrom(1 as const, 2 as const),
  extreme: glucose(40, 69.9),
  extremeLimit: fc.constantFrom(-1 as const, 0 as const),
});

const night = fc.record({
  share,
  state: fc.constantFrom('very-low' as const, 'low' as const, 'none-seen' as const, 'unknown' as const),
  lowest: glucose(40, 69),
  longestLow: fc.integer({ min: 0, max: 300 }),
});

/** Any measures at all, consistent or not: whatever is said about them has to keep the rules of speaking. */
const anyMeasures: fc.Arbitrary<Measures> = fc
  .record({
    n: days,
    share,
    lows: fc.array(low, { maxLength: 20 }),
    highs: fc.array(fc.integer({ min: 15, max: 2000 }), { maxLength: 20 }),
    night,
    lastNight: night,
    bands: fc.array(fc.integer({ min: 0, max: 5000 }), { minLength: 5, maxLength: 5 }),
    met: fc.boolean(),
    good: share,
    rises: fc.array(fc.double({ min: -60, max: 120, noNaN: true }), { minLength: 1, maxLength: 28 }),
    rebounds: fc.integer({ min: 0, max: 8 }),
    censored: fc.integer({ min: 0, max: 2000 }),
    cv: fc.double({ min: 10, max: 90, noNaN: true }),
    wide: fc.integer({ min: 0, max: 300 }),
    verdict: fc.constantFrom('more-than-noise' as const, 'not-told-apart' as const, 'cannot-tell' as const),
    changes: fc.array(share, { minLength: 4, maxLength: 4 }),
    sticks: fc.array(fc.tuple(fc.integer({ min: 40, max: 400 }), fc.integer({ min: 40, max: 400 })), {
      minLength: 1,
      maxLength: 8,
    }),
  })
  .map((any) => {
    const [veryLow, lower, inRange, high, veryHigh] = any.bands as [number, number, number, number, number];
    const goals = Object.values(targetSets.adult.goals).map((goal) => ({ ...goal, met: any.met }));
    return measuresWith({
      coverage: like.seenCoverage(any.n, any.share),
      lows: episode.lowsLike(...any.lows.map((each) => ({ ...each, outerMinutes: each.level === 2 ? 15 : 0 }))),
      highs: episode.highsLike(...any.highs.map((minutes) => ({ minutes, outerMinutes: minutes, startMinute: 1090 }))),
      nights: like.nightsLike(any.n, any.night, any.lastNight),
      timeInBands: like.bandsLike(
        { 'very-low': veryLow, low: lower, 'in-range': inRange, high, 'very-high': veryHigh },
        ...goals,
      ),
      windows: like.windowsLike(any.n, Math.floor(any.good * any.n)),
      daily: like.daysLike(Array.from({ length: any.n }, () => any.good)),
      dawnRise: like.dawnLike(any.rises),
      rebounds: episode.reboundsLike(any.rebounds, any.rebounds + 2),
      mean: like.meanLike(150, any.censored),
      cv: { ok: true, value: any.cv, n: 100, of: 'readings' },
      modalDay: like.modalDayLike(80, { 7: any.wide }),
      thenAndNow: trust.thenAndNowLike(
        ...(['low', 'lows', 'in-range', 'high'] as const).map((of, i) => {
          const now = any.changes[i]! * (of === 'lows' ? 20 : 1);
          return { of, before: any.good, now, change: now - any.good, verdict: any.verdict, why: 'few-days' as const };
        }),
      ),
      fingersticks: trust.sticksLike(...(any.sticks as [number, number][])),
      pressedLows: trust.pressedLike(Math.min(any.rebounds, 3), any.rebounds + 1),
      alarms: trust.alarmsLike(
        Array.from({ length: any.rebounds }, () => 2),
        any.rebounds,
        any.n,
      ),
      overnight: trust.overnightLike(any.rises.map((rise) => -rise)),
      rates: trust.ratesLike(any.share / 10),
      oddStretches: trust.oddLike(any.rebounds, any.n % 3),
      sensors: trust.sensorsLike(0),
      labA1c: trust.a1cLike(5 + any.cv / 20, 7),
    });
  });

const options = fc.record({
  unit: fc.constantFrom('mg/dL' as const, 'mmol/L' as const),
  voice: fc.constantFrom('clinic' as const, 'patient' as const),
  set: fc.constantFrom<TargetSet['id']>('adult', 'older', 'pregnancy-type-1', 'pregnancy-other'),
});

/** English: 20 words a sentence, by grade. Spanish: a fifth and two fifths more, for its articles (ours), on the INFLESZ scale. */
const TONGUES = [
  {
    language: 'en',
    book: english,
    faults,
    sentences,
    words,
    longest: { patient: 20, clinic: 20 },
    easy: (text: string, voice: 'clinic' | 'patient') => grade(text) <= (voice === 'patient' ? 7 : 10),
  },
  {
    language: 'es',
    book: wordsOf('es') as object,
    faults: faltas,
    sentences: frases,
    words: palabras,
    longest: { patient: 24, clinic: 28 },
    easy: (text: string) => inflesz(contar(text)) >= 65,
  },
];

test.each(TONGUES)('whatever was measured, what is said keeps the rules of its voice ($language)', (tongue) => {
  const { book, faults, sentences, words, longest, easy } = tongue;
  fc.assert(
    fc.property(anyMeasures, options, (measures, { unit, voice, set }) => {
      const targets = targetSets[set];
      const speaker = speakerOf(book, { unit, voice, targets });
      for (const { id, look } of lookAll(measures, targets)) {
        if (look.case !== 'holds') {
          if (look.case === 'untold') expect(look.why).not.toBe('failed');
          continue;
        }
        for (const part of [
          ...(voice === 'clinic' ? ['name'] : []),
          'topic',
          `${voice}.what`,
          `${voice}.why`,
          `${voice}.ask`,
        ]) {
          const key = `findings.${id}.${part}`;
          const text = speaker.sayIfKnown(key, look.params);
          if (text === null) continue;
          expect(faults(text, voice), `${key}: ${text}`).toEqual([]);
          expect(text).not.toMatch(/NaN|undefined|null|Infinity|[{}]| {2}|\s[.,;]/);
          for (const one of sentences(text))
            expect(words(one).length, `${key}: ${one}`).toBeLessThanOrEqual(longest[voice]);
          if (words(text).length >= 30) expect(easy(text, voice), `${key}: ${text}`).toBe(true);
        }
      }
    }),
    { numRuns: 60 },
  );
});

test('a low is never left for later: with a very low glucose it is the first topic, and 2 topics are the most', () => {
  fc.assert(
    fc.property(anyMeasures, (measures) => {
      const found = lookAll(measures, targetSets.adult);
      const chosen = topics(found, null);
      expect(chosen.length).toBeLessThanOrEqual(2);
      if (chosen.length === 2) expect(chosen[0]!.id).toBe('very-low');
      const held = (id: FindingId) => found.some((one) => one.id === id && one.look.case === 'holds');
      const veryLow = found.some(
        ({ id, look }) => id === 'very-low' && look.case === 'holds' && look.variant === 'episodes',
      );
      if (veryLow) expect(chosen[0]!.id).toBe('very-low');
      else if (held('lows-clustered')) expect(chosen[0]!.rule).toBe('lows-first');
      for (const { id, rule } of chosen) {
        expect(held(id)).toBe(true);
        expect(english.findings.rules).toHaveProperty(rule);
      }
    }),
    { numRuns: 100 },
  );
});
