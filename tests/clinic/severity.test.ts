import { expect, test } from 'vitest';
import { contentOf, listSpeaker, worklistReport } from '../../src/clinic/lists.ts';
import { severityOf } from '../../src/clinic/severity.ts';
import { USUAL } from '../../src/clinic/thresholds.ts';
import { place, rank } from '../../src/clinic/worklist.ts';
import { findings } from '../../src/findings/index.ts';
import type { Facts, Outcome } from '../../src/model/clinic.ts';
import type { LocalDate } from '../../src/model/glucose.ts';
import { topicText } from '../../src/pages/worklistTexts.ts';
import { english } from '../support/english.ts';
import { facts, outcome } from './outcomes.ts';

const none = facts();
const speaker = listSpeaker(english);
const plain = (text: string): string => text.replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ');

/** 1 % of a day is 14 minutes, of a week 1 h 41 min; 2 hours below 70 mg/dL make a low extended: Battelino 2019 and 2023. */
test.each<[string, Partial<Facts>, Record<string, number>]>([
  ['nothing', {}, {}],
  ['1 % of the time very low', { shares: { ...none.shares!, veryLow: 0.01 } }, { veryLow: 10 }],
  ['a low of two hours', { lows: { ...none.lows!, count: 1, longest: 120 } }, { longestLow: 10 }],
  [
    'one very low night in seven',
    { nights: Array.from({ length: 7 }, (_, i) => (i ? 'none-seen' : 'very-low')) },
    { nights: 10 },
  ],
  [
    'nights that were not seen count for nothing',
    { nights: ['very-low', 'none-seen', 'unknown', 'unknown', 'low', 'none-seen'] },
    { nights: 22 },
  ],
  ['six hours on end', { highs: { ...none.highs!, longestLevel2: 360 } }, { unbrokenHigh: 10 }],
  ['insulin not noted twice', { highs: { ...none.highs!, withoutInsulin: 2 } }, { noInsulin: 10 }],
  ['and nine times', { highs: { ...none.highs!, withoutInsulin: 9 } }, { noInsulin: 15 }],
  ['no insulin noted at all says nothing', { highs: { ...none.highs!, withoutInsulin: null } }, {}],
  ['lows worse', { change: { with: null, worse: ['very-low', 'high'], better: [], told: true } }, { worse: 10 }],
  ['highs worse', { change: { with: null, worse: ['high'], better: [], told: true } }, { worse: 5 }],
  ['more nights with a low', { lastTime: { measure: { of: 'nights-low', way: 'worse' } } }, { worse: 10 }],
  ['agreed, and no better', { lastTime: { goal: 'x', measure: { of: 'low', way: 'within-noise' } } }, { agreed: 5 }],
  ['agreed, nothing to measure', { lastTime: { step: 'x', measure: null } }, { agreed: 5 }],
  ['agreed, and better', { lastTime: { goal: 'x', measure: { of: 'low', way: 'better' } } }, {}],
])('%s', (_, part, expected) => {
  const { points, parts } = severityOf(facts(part));
  expect(Object.fromEntries(parts.map(({ of, points: n }) => [of, n]))).toEqual(expected);
  expect(points).toBe(Object.values(expected).reduce((sum, n) => sum + n, 0));
});

const withPoints = (code: string, longest: number, more: Partial<Facts> = {}): Outcome =>
  outcome({
    code,
    facts: facts({ lows: { ...none.lows!, count: 1, level2: longest > 60 ? 1 : 0, night: 2, longest }, ...more }),
  });

test('the line stands where the day is full; who is below it is counted and the first of them named, and nobody leaves the list', () => {
  const lines = rank(
    [
      ...[600, 480, 360, 240, 120, 60].map((longest, i) => withPoints(`P-${i + 1}`, longest)),
      outcome({ code: 'U-1', facts: null, refusals: [{ key: 'clinic.unread.emptyFolder', params: {} }] }),
      outcome({ code: 'S-1' }),
    ],
    USUAL,
  );
  expect(lines.map(({ outcome: { code } }) => code)).toEqual(['U-1', 'P-1', 'P-2', 'P-3', 'P-4', 'P-5', 'P-6', 'S-1']);
  const page = (places: number | null) => {
    const printing = { paper: 'a4' as const, printed: '2026-03-01', version: '1', clinic: undefined };
    const content = contentOf(lines, USUAL, [], true, 'pressing', places);
    return worklistReport(content, speaker, printing, 'paper').pages[0]!.blocks;
  };
  const codes = (places: number | null) =>
    page(places)
      .flatMap((block) => (block.kind === 'table' ? [block.rows.map(([code]) => code!.text)] : []))
      .slice(1);
  expect(codes(3)).toEqual([['U-1', 'P-1', 'P-2'], ['P-3', 'P-4', 'P-5'], ['P-6'], ['S-1']]);
  expect(codes(20).flat()).toHaveLength(8);
  expect(codes(null).flat()).toHaveLength(8);
  const text = plain(JSON.stringify(page(3)));
  expect(text).toContain(
    'The day has 3 places: numbers 1 to 3. Below this line stand 4 people who are to be looked at',
  );
  expect(text).toContain(
    '3 of them had a very low event of 15 minutes or more; the files of all of them could be read.',
  );
  expect(text).toContain('4. P-3: No topic stands out. 30 points: longest low 30');
  expect(plain(JSON.stringify(page(20)))).toContain('numbers 1 to 7. Nobody else is to be looked at.');
});

test('who was steady at this visit and the two before stands last, in a group of its own', () => {
  const ended = (to: string, more: Partial<Facts> = {}) => facts({ to: to as LocalDate, ...more });
  const tier = (...before: Facts[]) => place(outcome({ facts: ended('2026-03-15'), before }), USUAL).tier;
  expect(tier(ended('2026-03-01'), ended('2026-02-15'))).toBe('quiet');
  expect(tier(ended('2026-03-01'))).toBe('steady');
  expect(tier(ended('2026-03-01'), ended('2026-02-15', { below: 0.2, unmet: ['low'] }))).toBe('steady');
  // The same visit twice is one.
  expect(tier(ended('2026-03-01'), ended('2026-02-26'))).toBe('steady');
});

test('the first line of a person says the topic in eight words at most', () => {
  for (const { id } of findings) {
    const line = place(
      outcome({
        facts: facts({ topic: { id, words: { food: 'brown rice with lentils and yoghurt', judged: 'no' } } }),
      }),
      USUAL,
    );
    for (const of of ['nights', 'unbrokenHigh', 'longestLow', 'noInsulin', 'worse', 'agreed'] as const) {
      const text = topicText(speaker, { ...line, severity: { points: 9, parts: [{ of, points: 9 }] } });
      expect(text.replace(' …', '').split(' ').length, `${id} ${of}`).toBeLessThanOrEqual(8);
    }
  }
  const nights: Facts['nights'] = ['very-low', 'very-low'];
  const about = (id: string) =>
    topicText(speaker, place(outcome({ facts: facts({ nights, topic: { id, words: {} } }) }), USUAL));
  expect(about('very-low')).toBe('Very low glucose, and low at night');
  expect(topicText(speaker, place(outcome({ facts: null }), USUAL))).toBe('No papers: first see what is wrong');
});
