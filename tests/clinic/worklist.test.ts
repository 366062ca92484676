import fc from 'fast-check';
import { expect, test } from 'vitest';
import { contentOf, listSpeaker, worklistReport } from '../../src/clinic/lists.ts';
import { PUBLISHED, USUAL, withUsual } from '../../src/clinic/thresholds.ts';
import { FLAGGED } from '../../src/clinic/tiers.ts';
import { countTiers, place, rank } from '../../src/clinic/worklist.ts';
import type { Speaker } from '../../src/language/index.ts';
import { layered, type Words } from '../../src/language/layers.ts';
import type { Facts, Tier, WorklistLine } from '../../src/model/clinic.ts';
import type { LocalDate } from '../../src/model/glucose.ts';
import { agreedText, briefReasons, reasonsText, sinceText, withAgreed } from '../../src/pages/worklistTexts.ts';
import { parseThresholds } from '../../src/schemas/thresholds.ts';
import { english } from '../support/english.ts';
import { wordsOf } from '../support/story.ts';
import { facts, outcome } from './outcomes.ts';

const lows = (part: Partial<NonNullable<Facts['lows']>>): Partial<Facts> => ({
  lows: { count: 0, level2: 0, night: 0, dates: [], level2Dates: [], ...part },
});
const shares = (part: Partial<NonNullable<Facts['shares']>>): Facts['shares'] => ({ ...facts().shares!, ...part });

const change: NonNullable<Facts['change']> = { with: facts().from, worse: [], better: [], told: true };

/** With the usual thresholds. Goals met or not are decided where the target set is known (measures/timeInBands). */
test.each<[string, Partial<Facts>, Tier]>([
  ['nothing to tell', {}, 'steady'],
  ['one very low event', lows({ count: 1, level2: 1 }), 'very-low'],
  ['very low time at its goal or over, without an event', { unmet: ['very-low'] }, 'very-low'],
  ['low time over its goal', { below: 0.05, unmet: ['low'] }, 'lows'],
  ['low time of 5 %, where the set has no goal for it', { below: 0.05 }, 'steady'],
  ['one low at night', lows({ count: 1, night: 1 }), 'steady'],
  ['two lows at night', lows({ count: 2, night: 2 }), 'lows'],
  // Crossen 2022, Front Endocrinol 13:1063290: more than 15 % above 250 mg/dL.
  ['exactly 15 % very high', { shares: shares({ veryHigh: 0.15 }) }, 'steady'],
  ['a little over 15 % very high', { shares: shares({ veryHigh: 0.1500001 }) }, 'very-high'],
  ['no second high level in the set', { shares: shares({ veryHigh: null }) }, 'steady'],
  // Battelino 2019, Diabetes Care 42:1593-1603: 14 days and 70 %.
  ['14 days, 70 %', { coverage: { ...facts().coverage, share: 0.7 } }, 'steady'],
  ['14 days, just under 70 %', { coverage: { ...facts().coverage, share: 0.69999 } }, 'not-enough'],
  ['13 days', { coverage: { ...facts().coverage, days: 13 } }, 'not-enough'],
  [
    'too few data and a very low event: the graver comes first',
    { ...lows({ count: 1, level2: 1 }), coverage: { ...facts().coverage, days: 3 } },
    'very-low',
  ],
  ['5 hours and 59 minutes very high on end', { highs: { ...facts().highs!, longestLevel2: 359 } }, 'steady'],
  ['6 hours very high on end', { highs: { ...facts().highs!, longestLevel2: 360 } }, 'long-high'],
  [
    '17 hours very high on end, and 2 lows at night: the high comes first',
    { ...lows({ count: 2, night: 2 }), highs: { ...facts().highs!, longestLevel2: 1020 } },
    'long-high',
  ],
  ['worse than noise', { change: { ...change, worse: ['in-range'] } }, 'worse'],
  ['better than noise', { change: { ...change, better: ['in-range'] } }, 'steady'],
  ['a change not told apart from noise', { change }, 'steady'],
  ['lows withheld', { lows: null, shares: null, below: null }, 'steady'],
])('%s', (_, part, tier) => {
  const line = place(outcome({ facts: facts(part) }), USUAL);
  expect(line.tier).toBe(tier);
  expect(line.reasons.length === 0).toBe(tier === 'steady');
});

test('whoever could not be read comes first, with the reason', () => {
  const unread = outcome({ code: 'Z', facts: null, refusals: [{ key: 'clinic.unread.vanished', params: {} }] });
  const [first] = rank([outcome({ facts: facts(lows({ level2: 9 })) }), unread], USUAL);
  expect(first).toMatchObject({ tier: 'unread', reasons: [{ key: 'clinic.unread.vanished' }] });
});

test('the contact rule of 2022 looks at 5 % below 70 and 15 % above 250 mg/dL alone', () => {
  const tier = (part: Partial<Facts>): Tier => place(outcome({ facts: facts(part) }), PUBLISHED.contact!).tier;
  expect(tier({ below: 0.05 })).toBe('steady');
  expect(tier({ below: 0.051 })).toBe('lows');
  expect(tier({ shares: shares({ veryHigh: 0.16 }) })).toBe('very-high');
  expect(tier(lows({ level2: 3 }))).toBe('steady');
});

const anyFacts = fc
  .record({
    level2: fc.nat(3),
    night: fc.nat(3),
    below: fc.double({ min: 0, max: 1, noNaN: true }),
    veryHigh: fc.double({ min: 0, max: 1, noNaN: true }),
    days: fc.integer({ min: 1, max: 14 }),
  })
  .map(({ level2, night, below, veryHigh, days }) =>
    facts({
      ...lows({ count: level2 + night, level2, night }),
      below,
      shares: shares({ veryHigh }),
      coverage: { ...facts().coverage, days },
    }),
  );
const anyOutcomes = fc
  .uniqueArray(fc.string({ minLength: 1, maxLength: 4 }))
  .chain((codes) =>
    fc.tuple(...codes.map((code) => fc.option(anyFacts).map((own) => outcome({ code, stem: code, facts: own })))),
  );

test('everybody stands on the list exactly once: unread, to be looked at by points, steady; whatever order they came in', () => {
  fc.assert(
    fc.property(anyOutcomes, (outcomes) => {
      const lines = rank(outcomes, USUAL);
      expect(lines.map((line) => line.outcome.code).sort()).toEqual(outcomes.map(({ code }) => code).sort());
      const parts = lines.map(({ tier }) => (tier === 'unread' ? 0 : FLAGGED.includes(tier) ? 1 : 2));
      expect(parts).toEqual([...parts].sort((a, b) => a - b));
      const points = lines.filter(({ tier }) => FLAGGED.includes(tier)).map(({ severity }) => severity.points);
      expect(points).toEqual([...points].sort((a, b) => b - a));
      expect(lines.map(({ number }) => number)).toEqual(lines.map((_, i) => i + 1));
      expect(Object.values(countTiers(lines)).reduce((sum, n) => sum + n, 0)).toBe(outcomes.length);
      expect(rank([...outcomes].reverse(), USUAL)).toEqual(lines);
    }),
  );
});

test('a thresholds file changes what it names and no more; a misspelt name is refused', () => {
  const read = parseThresholds({ veryLow: { events: 2 }, veryHigh: { share: null } });
  expect(read.ok && withUsual(read.thresholds)).toEqual({
    ...USUAL,
    veryLow: { ...USUAL.veryLow, events: 2 },
    veryHigh: { ...USUAL.veryHigh, share: null },
  });
  for (const wrong of [
    { verylow: {} },
    { lows: { share: 4 } },
    { veryLow: { events: 0 } },
    { data: { share: 'goals' } },
    [],
  ]) {
    expect(parseThresholds(wrong).ok, JSON.stringify(wrong)).toBe(false);
  }
});

/** What a reader sees of a line, by the words of the pages. */
const reasonsOf = (line: WorklistLine) => reasonsText(listSpeaker(english), line.reasons);

test('reasons in one line: dates short, what is further from the goals together, no mark after a full stop', () => {
  const dates = ['2026-02-03', '2026-02-04', '2026-02-06', '2026-02-08', '2026-02-09'] as Facts['from'][];
  const low = lows({ count: 6, level2: 5, level2Dates: dates });
  const line = place(outcome({ facts: facts({ ...low, change: { ...change, worse: ['in-range', 'low'] } }) }), USUAL);
  expect(reasonsOf(line)).toBe(
    '5 very low events: Feb 3, Feb 4, Feb 6, Feb 8, and 1 more day; since last time: less time in range, more time low',
  );
  const unread = ['issues.no-readings', 'clinic.unread.emptyFolder'].map((key) => ({ key, params: {} }));
  expect(reasonsOf(place(outcome({ facts: null, refusals: unread }), USUAL))).toMatch(
    /[^.;]\. the folder holds no export$/,
  );
});

test('what was agreed last time stands with how its measure went; more such nights or days count as further from the goals', () => {
  const agreed = { goal: 'fewer lows after football', step: 'food before it' };
  const of = (lastTime: Facts['lastTime']) => place(outcome({ facts: facts({ change, lastTime: lastTime! }) }), USUAL);
  const speaker = listSpeaker(english);
  const better = of({ ...agreed, measure: { of: 'after-note', way: 'better' } });
  expect([better.tier, withAgreed(speaker, better, sinceText(speaker, better))]).toEqual([
    'steady',
    'within day-to-day noise. Agreed last time: “fewer lows after football”, “food before it”; its measure is closer to the goals now.',
  ]);
  const worse = of({ ...agreed, measure: { of: 'nights-low', way: 'worse' } });
  expect([worse.tier, reasonsOf(worse)]).toEqual(['worse', 'since last time: more nights with a low']);
  const days = of({ measure: { of: 'after-note', way: 'worse' } });
  expect(reasonsOf(days)).toBe('since last time: more days with what the last visit was about');
  // A share of the time is told by then and now itself; a change within chance moves nobody.
  for (const measure of [
    { of: 'low', way: 'worse' },
    { of: 'nights-low', way: 'within-noise' },
    { of: 'nights-low', way: 'cannot-tell' },
    null,
  ] as const)
    expect(of({ ...agreed, measure }).tier).toBe('steady');
  expect(agreedText(speaker, days)).toBe('');
  expect(agreedText(speaker, of({ step: agreed.step, measure: null }))).toBe('Agreed last time: “food before it”.');
});

test('a folder of many faulty files says three of its reasons where it is looked at, and how many more there are', () => {
  const faults = (n: number) => Array.from({ length: n }, (_, i) => ({ key: `issues.fault-${i}`, params: {} }));
  const shown = (n: number) => {
    const { reasons } = place(outcome({ facts: null, refusals: faults(n) }), USUAL);
    const words = listSpeaker(english);
    const repeat: Speaker['repeat'] = (said) =>
      said.key.startsWith('issues.fault-') ? `${said.key.slice(13)}.` : words.repeat(said);
    return briefReasons({ ...words, repeat }, reasons);
  };
  expect(shown(3)).toBe('0. 1. 2.');
  // One more takes no less room than to say that there is one more.
  expect(shown(4)).toBe('0. 1. 2. 3.');
  expect(shown(5)).toBe('0. 1. 2. And 2 more, all in worklist.csv.');
});

test('on paper and on a screen everybody stands once, with room to write on paper and a way to the papers on a screen', () => {
  const lines = rank(
    [
      outcome({ code: 'A', stem: 'A', outputs: [{ name: 'A-clinic-report.pdf', bytes: 1, sha256: 'aa' }] }),
      outcome({ code: 'B', stem: 'B', facts: facts(lows({ count: 1, level2: 1 })) }),
      outcome({
        code: 'C',
        stem: 'C',
        facts: null,
        refusals: [{ key: 'clinic.unread.vanished', params: { file: { q: 'word', value: 'x' } } }],
      }),
    ],
    USUAL,
  );
  const speaker = listSpeaker(english);
  const printing = { paper: 'a4' as const, printed: '2026-03-01', version: '1', clinic: undefined };
  const tables = (on: 'paper' | 'screen') =>
    worklistReport(contentOf(lines, USUAL, [], true), speaker, printing, on)
      .pages[0]!.blocks.flatMap((block) => (block.kind === 'table' ? [block] : []))
      .slice(1);
  const paper = tables('paper');
  expect(paper.map(({ rows }) => rows.map(([code]) => code!.text))).toEqual([['C'], ['B'], ['A']]);
  for (const { columns, rows } of paper) {
    expect(columns.slice(-2).map(({ title }) => title)).toEqual(['Seen by', 'Remark']);
    for (const row of rows) expect(row.slice(-2).map(({ text }) => text)).toEqual(['', '']);
    expect(columns.reduce((sum, { width }) => sum + width, 0)).toBeCloseTo(1, 9);
  }
  const [screen] = tables('screen');
  expect(screen!.rows.map(([code]) => [code!.text, code!.link])).toEqual([
    ['C', undefined],
    ['B', undefined],
    ['A', 'A/A-clinic-report.pdf'],
  ]);
  expect(screen!.columns.reduce((sum, { width }) => sum + width, 0)).toBeLessThanOrEqual(1);
});

test('by the time of the visit everyone stands in one table, those without one last', () => {
  const at = (code: string, visit: string | null, time?: string) =>
    outcome({ code, visit: visit as LocalDate | null, ...(time === undefined ? {} : { time }) });
  const lines = rank(
    [
      at('none', null),
      at('day', '2026-03-04'),
      at('late', '2026-03-04', '14:30'),
      at('early', '2026-03-04', '09:05'),
      at('before', '2026-03-03', '16:00'),
    ],
    USUAL,
  );
  const printing = { paper: 'a4' as const, printed: '2026-03-01', version: '1', clinic: undefined };
  const expected = ['before', 'early', 'late', 'day', 'none'];
  for (const [on, column] of [
    ['paper', 1],
    ['screen', 0],
  ] as const) {
    const report = worklistReport(contentOf(lines, USUAL, [], true, 'visit'), listSpeaker(english), printing, on);
    const tables = report.pages[0]!.blocks.flatMap((block) => (block.kind === 'table' ? [block] : []));
    expect(tables).toHaveLength(2);
    expect(tables[1]!.rows.map((row) => row[column]!.text)).toEqual(expected);
    expect(tables[1]!.rows.flat().some(({ text }) => plain(text).includes('Mar 4, 9:05 AM'))).toBe(true);
  }
});

/** Without the signs that keep texts and numbers together. */
const plain = (text: string): string => text.replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ');

test('beside each person stand the hours, the last nights and the topic; long highs go by their length', () => {
  const highs = (longestLevel2: number) => ({ ...facts().highs!, longestLevel2 });
  const lines = rank(
    [
      outcome({ code: 'short', facts: facts({ highs: highs(400) }) }),
      outcome({
        code: 'long',
        facts: facts({
          highs: highs(1020),
          nights: ['very-low', 'low', 'none-seen', 'unknown'],
          topic: { id: 'food-longer-high', words: { food: 'rice' } },
        }),
      }),
      // A record of an earlier version, and one whose topic this version does not know.
      outcome({ code: 'older', facts: facts(lows({ count: 2, night: 2 })) }),
      outcome({ code: 'other', facts: facts({ topic: { id: 'never-heard-of', words: {} } }) }),
    ],
    USUAL,
  );
  expect(lines.map(({ outcome: { code } }) => code)).toEqual(['long', 'short', 'older', 'other']);
  const printing = { paper: 'a4' as const, printed: '2026-03-01', version: '1', clinic: undefined };
  for (const on of ['paper', 'screen'] as const) {
    const report = worklistReport(contentOf(lines, USUAL, [], true), listSpeaker(english), printing, on);
    const cells = report.pages[0]!.blocks.flatMap((block) => (block.kind === 'table' ? block.rows.flat() : []));
    const pictures = cells.flatMap(({ picture }) => picture ?? []);
    expect(pictures).toHaveLength(4);
    expect(pictures[0]!.summary).toMatch(/in range 100\s%.*4\snights.*1\swas very low/s);
    expect(pictures[0]!.marks.filter(({ kind }) => kind === 'rect').length).toBe(1 + 4 + 1);
    const [about] = cells.filter(({ first }) => first?.includes('rice'));
    expect(plain(about!.first!)).toBe('Longer above range after rice');
    expect(plain(about!.text)).toMatch(/^17 h very high without a break.* 57 points: nights 29, unbroken high 28$/);
  }
});

test('folders of people who are not in the run are named, in both languages, the first twenty of many', () => {
  const former = Array.from({ length: 23 }, (_, i) => `F-${i + 1}`);
  const printing = { paper: 'a4' as const, printed: '2026-03-01', version: '1', clinic: undefined };
  const content = { ...contentOf(rank([outcome({ code: 'A' })], USUAL), USUAL, [], true), former };
  for (const [words, more] of [
    [english, 'F-20, and 3 more'],
    [layered(english, wordsOf('es') as Words), 'F-20, y 3 más'],
  ] as const) {
    const texts = JSON.stringify(worklistReport(content, listSpeaker(words), printing, 'paper')).replace(
      /[\u2066-\u2069]/g,
      '',
    );
    expect(texts).toContain(more);
    expect(texts).not.toContain('F-21');
  }
});
