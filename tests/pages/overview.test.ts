import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../src/analyse.ts';
import { compose } from '../../src/compose.ts';
import { timeLowOverGoal } from '../../src/findings/timeLowOverGoal.ts';
import { speakerOf } from '../../src/language/index.ts';
import { targetSets } from '../../src/targets/index.ts';
import { pageAsText } from '../../src/writers/text.ts';
import { openBandsLike } from '../support/examples/measures.ts';
import { measuresWith } from '../support/measures.ts';
import { analysisOf, wordsOf } from '../support/story.ts';

function page(analysis: Analysis): string {
  const report = compose(analysis, wordsOf(), { voice: 'clinic', paper: 'a4' });
  return pageAsText(report, 'overview').replaceAll('\n', ' ');
}

// Days asked for: review of 2023, doi 10.1089/dia.2023.0476 (21 to 35 for lows, 28 to 35 for CV).
test.each([
  [14, '14 days are short for lows (21 to 35 days) and for CV (28 to 35 days;'],
  [21, '21 days are short for CV (28 to 35 days;'],
  [28, null],
])('what %d days are short for', async (days, expected) => {
  const text = page(await analysisOf('evening-exercise', { days }));
  if (expected === null) expect(text).not.toContain('short for');
  else expect(text).toContain(expected);
});

test('a changed clock is told beside hours that are not 24 times the days', async () => {
  const text = page(await analysisOf('autumn-clock-change'));
  expect(text).toContain('The clocks changed on October 26, so that day does not have 24 hours.');
  expect(page(await analysisOf('steady-fortnight'))).not.toContain('clocks changed');
});

/** Of 20 % of the time: what is on which side of a goal says nothing yet. Battelino 2019: 14 days, 70 % of the readings. */
describe.each([
  ['en', '%: open', /%: (not )?met\b|meets/i, 'not enough data to judge a goal', 'not enough data to judge it'],
  [
    'es',
    '%: abierta',
    /%: (sí|no)(?!\p{L})|alcanza/iu,
    'no hay datos suficientes para evaluar una meta',
    'no hay datos suficientes para evaluarla',
  ],
])('goals of too few readings, in %s', (language, open, verdict, why, finding) => {
  test('no verdict on page 1, and why; all is computed all the same', async () => {
    const analysis = await analysisOf('thin-data');
    const report = compose(analysis, wordsOf(language), { voice: 'clinic', paper: 'a4' });
    const text = pageAsText(report, 'overview').replaceAll('\n', ' ').replaceAll('\u00a0', ' ');
    expect(text.split(open)).toHaveLength(6);
    expect(text).not.toMatch(verdict);
    expect(text).toContain(why);
    expect(text).toMatch(/\b72\s?%/);
    const further = compose(analysis, wordsOf(language), { voice: 'clinic', paper: 'a4', part: 'further' });
    expect(pageAsText(further, 'stands-out').replaceAll('\n', ' ')).toContain(finding);
    expect(pageAsText(further, 'stands-out')).not.toMatch(verdict);
  });

  test('a verdict where there is enough', async () => {
    const report = compose(await analysisOf('steady-fortnight'), wordsOf(language), { voice: 'clinic', paper: 'a4' });
    const text = pageAsText(report, 'overview').replaceAll('\n', ' ').replaceAll('\u00a0', ' ');
    expect(text).not.toContain(open);
    expect(text).not.toContain(why);
    expect(text).toMatch(verdict);
  });
});

test('programs are told too: a field beside the goals, whose meaning stays', async () => {
  const thin = (await analysisOf('thin-data')).measures.timeInBands;
  if (!thin.ok) throw new Error(thin.why);
  expect(thin.value.judged).toBe(false);
  expect(thin.value.goals.map(({ met }) => typeof met)).toEqual(Array(5).fill('boolean'));
});

test.each([
  ['en', 'clinic', 'There are not enough data to judge it.', 'Time low: goal not judged yet'],
  ['en', 'patient', 'too few readings to say if that is more than the usual target', null],
  ['es', 'clinic', 'No hay datos suficientes para evaluarlo.', 'Tiempo con glucosa baja: meta aún sin evaluar'],
  ['es', 'patient', 'Hay muy pocas lecturas para saber si es más que la meta habitual.', null],
] as const)('much time low in few readings is told, without a verdict: %s, %s', (language, voice, what, name) => {
  const bands = openBandsLike({ low: 60, 'in-range': 940 }, { of: 'low', op: '<', share: 0.04, met: false });
  const look = timeLowOverGoal.look(measuresWith({ timeInBands: bands }), targetSets.adult);
  if (look.case !== 'holds') throw new Error(look.case);
  const speaker = speakerOf(wordsOf(language), { unit: 'mg/dL', voice, targets: targetSets.adult });
  expect(speaker.say(`findings.time-low-over-goal.${voice}.what`, look.params)).toContain(what);
  if (name !== null) expect(speaker.say('findings.time-low-over-goal.name', look.params)).toBe(name);
});
