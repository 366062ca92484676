import fc from 'fast-check';
import { expect, test } from 'vitest';
import { speakerOf } from '../../src/language/index.ts';
import { targetSets } from '../../src/targets/index.ts';
import { lookAll } from '../../src/topics/index.ts';
import { english } from '../support/english.ts';
import * as like from '../support/examples/occasions.ts';
import { measuresWith } from '../support/measures.ts';
import { grade, sentences, words } from '../support/readability.ts';
import { faults } from '../support/wordLists.ts';

const COMPARED = [
  'extra-carbs',
  'exercise-or-rest',
  'exercise-kind',
  'food',
  'insulin-after',
  'carb-amount',
  'weekend',
] as const;

const NOTED = [
  'exercise',
  'exercise-kind',
  'food',
  'bedtime-food',
  'insulin',
  'insulin-only',
  'insulin-after',
  'more-carbs',
  'weekend',
  'first-sensor-day',
] as const;

const given = fc.record({
  id: fc.constantFrom(...COMPARED),
  verdict: fc.constantFrom('hint' as const, 'not-told-apart' as const, 'too-few' as const),
  difference: fc.double({ min: -170, max: 170, noNaN: true }),
  slot: fc.constantFrom('morning', 'midday', 'afternoon', 'evening', 'night', 'snack', null),
  aLow: fc.integer({ min: 0, max: 4 }),
  bLow: fc.integer({ min: 0, max: 9 }),
  alsoDiffers: fc.option(
    fc.record({
      id: fc.constantFrom(...NOTED),
      name: fc.constant('rice'),
      a: fc.constant({ k: 4, n: 4 }),
      b: fc.record({ k: fc.integer({ min: 0, max: 5 }), n: fc.constant(5) }),
    }),
  ),
});

test('whatever notes show, what is said judges nobody, claims no cause and advises no dose', () => {
  fc.assert(
    fc.property(
      given,
      fc.array(fc.record({ low: fc.boolean(), highMinutes: fc.integer({ min: 0, max: 180 }) }), { maxLength: 20 }),
      fc.array(fc.record({ lowSoon: fc.boolean(), low: fc.boolean() }), { maxLength: 12 }),
      fc.record({ days: fc.integer({ min: 1, max: 28 }), noted: fc.integer({ min: 0, max: 28 }), late: fc.nat(40) }),
      fc.constantFrom('clinic' as const, 'patient' as const),
      fc.constantFrom('mg/dL' as const, 'mmol/L' as const),
      (comparison, meals, sessions, log, voice, unit) => {
        const measures = measuresWith({
          comparisons: like.comparisonsLike(comparison),
          meals: like.mealsLike(...meals),
          exercise: like.sessionsLike(...sessions),
          corrections: like.correctionsLike(...meals.map(({ low }) => ({ low }))),
          noteLog: like.noteLogLike(log),
        });
        const speaker = speakerOf(english, { unit, voice, targets: targetSets.adult });
        for (const { id, look } of lookAll(measures, targetSets.adult)) {
          if (look.case !== 'holds') continue;
          for (const part of ['topic', 'name', `${voice}.what`, `${voice}.why`, `${voice}.ask`]) {
            const key = `findings.${id}.${part}`;
            const alone = speaker.sayIfKnown(key, look.params);
            if (alone === null) continue;
            const also = part.endsWith('what') && look.also ? speaker.say(`pages.alsoDiffers.${voice}`, look.also) : '';
            const text = `${alone} ${also}`.trim();
            expect(faults(text, voice), `${key}: ${text}`).toEqual([]);
            expect(text).not.toMatch(/NaN|undefined|null|Infinity|[{}]| {2}|\s[.,;]/);
            for (const sentence of sentences(text)) expect(words(sentence).length, sentence).toBeLessThanOrEqual(20);
            if (words(text).length >= 30) expect(grade(text), text).toBeLessThanOrEqual(voice === 'patient' ? 7 : 10);
          }
        }
      },
    ),
    { numRuns: 100 },
  );
});
