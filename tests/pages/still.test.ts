import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analyse.ts';
import { compose } from '../../src/compose.ts';
import { held } from '../samples/stories.ts';
import { everyForm, pageText } from '../support/pageText.ts';
import { wordsOf } from '../support/story.ts';

const usual = (day: number, minute: number): string => String(Math.round(140 + 40 * Math.sin(minute / 150 + day)));

/** A fortnight of readings, five minutes apart. */
function fortnight(cell: (day: number, minute: number) => string) {
  const rows = ['Time,Sensor glucose (mg/dL)'];
  for (let at = 0; at < 14 * 1440; at += 5) {
    const time = new Date(Date.UTC(2026, 2, 2) + at * 60_000).toISOString().slice(0, 16).replace('T', ' ');
    rows.push(`${time},${cell(Math.floor(at / 1440), at % 1440)}`);
  }
  const bytes = new TextEncoder().encode(`${rows.join('\n')}\n`);
  return held(analyse([{ name: 'a.csv', bytes }], { targets: 'adult', today: '2026-04-01', person: {} }, 'test'));
}

/** Each with the words of its own end of the sensor, in English and in Spanish; null where all is at one value. */
const PEOPLE = [
  ['every reading LOW', () => 'LOW', 'below what the sensor can show', 'por debajo de lo que el sensor puede mostrar'],
  [
    'every reading HIGH',
    () => 'HIGH',
    'above what the sensor can show',
    'por encima de lo que el sensor puede mostrar',
  ],
  ['every reading 100', () => '100', null, null],
  [
    'one day LOW',
    (day: number, minute: number) => (day === 5 ? 'LOW' : usual(day, minute)),
    'below what the sensor can show',
    'por debajo de lo que el sensor puede mostrar',
  ],
  [
    'one day HIGH',
    (day: number, minute: number) => (day === 5 ? 'HIGH' : usual(day, minute)),
    'above what the sensor can show',
    'por encima de lo que el sensor puede mostrar',
  ],
] as const;

// Whether such readings are glucose nobody can say from them: published guidance asks for a fingerstick where a sensor's number
// does not fit (ADA Standards of Care, section 7, from memory). So nothing is taken out, lows stay first, and it is asked.
describe.each(PEOPLE)('%s', (name, cell, english, spanish) => {
  const analysis = fortnight(cell);
  const most = name.startsWith('every');
  const holding = analysis.found.flatMap(({ id, look }) => (look.case === 'holds' ? [id] : []));

  test('that the readings stand still is told, and no low is taken away by it', () => {
    expect(holding).toContain('standing-still');
    expect(holding.includes('very-low')).toBe(name.includes('LOW'));
    if (name.includes('LOW')) expect(analysis.topics[0]).toMatchObject({ id: 'very-low' });
    if (name === 'every reading LOW') expect(analysis.topics[1]).toMatchObject({ id: 'standing-still' });
    if (name === 'every reading 100') expect(analysis.topics).toMatchObject([{ id: 'standing-still' }]);
  });

  test('what stood still for most of the time shows nothing that went well', () => {
    const well = ['no-lows-seen', 'steady-nights', 'best-window', 'best-days'];
    if (most) expect(holding.filter((id) => well.includes(id))).toEqual([]);
    else expect(holding).toContain('best-days');
  });

  test.each([
    ['en', english, 'finger stick', /no readings|low from midnight to midnight|at below|at above|too few to rule/],
    ['es', spanish, 'pinchazo', /sin lecturas|baja de medianoche a medianoche|con por (debajo|encima)|muy pocas para/],
  ] as const)(
    '%s: no day with readings is called empty, and no height is told that was not read',
    (language, end, ask, never) => {
      const words = wordsOf(language);
      const [clinic, person] = (['clinic', 'patient'] as const).map((voice) =>
        pageText(compose(analysis, words, { voice, paper: 'a4' })).replaceAll('\u00a0', ' '),
      ) as [string, string];
      for (const text of [clinic, person]) expect(never.exec(text)?.[0]).toBeUndefined();
      expect(person).toContain(ask);
      if (end === null) return;
      expect(clinic).toContain(end);
      const further = everyForm(compose(analysis, words, { voice: 'clinic', paper: 'a4', part: 'further' }).pages);
      expect(never.exec(further)?.[0]).toBeUndefined();
    },
  );
});

test('where the usual day has one height, or none, its summary says no other', () => {
  const summary = (cell: () => string) =>
    pageText(compose(fortnight(cell), wordsOf(), { voice: 'clinic', paper: 'a4' })).replaceAll('\u00a0', ' ');
  expect(summary(() => '100')).toContain('The middle of the days is 100 mg/dL at every hour.');
  expect(summary(() => 'LOW')).toContain('The middle of the days lies below what the sensor can show at every hour.');
});
