import type { FindingId, Found } from '../../src/findings/index.ts';
import { findings } from '../../src/findings/index.ts';
import type { Furthest } from '../../src/model/topics.ts';

/** A finding that holds, in one of its ways. */
export type Held = FindingId | `${FindingId}/${string}`;

export const heldOnly = (...ids: Held[]): Found[] =>
  findings.map(({ id }) => {
    const name = ids.find((each) => each.split('/')[0] === id);
    if (name === undefined) return { id, look: { case: 'absent' } };
    const variant = name.split('/')[1];
    return { id, look: { case: 'holds', params: {}, where: [], ...(variant === undefined ? {} : { variant }) } };
  });

const AACE = 'Grunberger 2021, Endocr Pract 27:505-537 (AACE; lows first where time below nears its goal)';
const ORDER = 'Szmuilowicz & Aleppo 2022, Postgrad Med 134:743-751 (lows before highs, highs before spread)';
const DATA = 'Aleppo & Webb 2019, Endocr Pract 25:362-374 (enough data first; after lows: ours)';
const DANNE = 'Danne 2017, Diabetes Care 40:1631-1640 (lows at night apart); first among lows of level 1: ours';

/** One example a row of templates/topics.json, in its order: run by the tests, printed in docs/topics.md. */
export interface RowExample {
  source: string;
  example: string;
  held: Held[];
  furthest: Furthest | null;
}

const row = (source: string, example: string, held: Held[], furthest: Furthest | null = null): RowExample => ({
  source,
  example,
  held,
  furthest,
});

/** What always stands beside, so that a row has something to go before. */
const ALSO: Held[] = ['lows-seen', 'time-in-range/missed', 'wide-spread', 'best-days'];

export const ROWS: readonly RowExample[] = [
  row(
    'Battelino 2019, Diabetes Care 42:1593-1603 (level 2: immediate attention)',
    'One low of 15 minutes under 54 mg/dL at noon, and 37 % above range.',
    ['very-low/episodes', 'long-very-high', ...ALSO],
    'highs',
  ),
  row(DANNE, 'Two nights with a low of 65 mg/dL, and 37 % above range.', ['lows-at-night/repeated', ...ALSO], 'highs'),
  row(
    'Battelino 2023, Lancet Diabetes Endocrinol 11:42-57 (extended lows, from memory)',
    'One low of two hours in the afternoon.',
    ['long-lows', ...ALSO],
    'highs',
  ),
  row(AACE, '4.5 % below 70 mg/dL by day; the goal is below 4 %.', ['time-low-over-goal', ...ALSO], 'highs'),
  row(ORDER, 'Lows between 3 and 5 PM on five of 14 days, 1 % of the time.', ['lows-clustered', ...ALSO], 'highs'),
  row(
    'ours: such lows are clustered, on a note instead of a time of day',
    '18 of 18 lows by day within 12 hours after exercise, on 8 of 10 days with it and 0 of 18 without.',
    ['before-lows/more', ...ALSO],
    'highs',
  ),
  row('ours', '8 minutes under 54 mg/dL, never 15 on end.', ['very-low/brief', 'not-enough-data', ...ALSO]),
  row('ours', 'One evening of readings, above 250 mg/dL for 6 hours on end.', [
    'long-very-high/hours',
    'not-enough-data',
    'lows-at-night/once',
    ...ALSO,
  ]),
  row(
    'ours: windows of real recordings (docs/decisions.md)',
    '68 hours of readings, 84 % above range, above 250 mg/dL for 3 hours on one day.',
    ['long-very-high', 'not-enough-data', 'nights-without-data/many', ...ALSO],
    'far-highs',
  ),
  row('ours', 'The same, high in the evenings.', ['high-after-window', 'not-enough-data', ...ALSO], 'far-highs'),
  row(
    'ours',
    'The same, at no time of day in particular.',
    ['time-in-range/open', 'not-enough-data', 'lows-seen'],
    'far-highs',
  ),
  row('ours', 'Every reading 100 mg/dL for two weeks.', ['standing-still/most', 'few-notes', 'time-in-range/met']),
  row(DATA, '9 days of readings, 35 % above range.', ['not-enough-data', 'nights-without-data/many', ...ALSO]),
  row(DATA, 'Few readings on 6 of 14 nights.', ['nights-without-data/many', 'long-very-high', ...ALSO]),
  row(
    'ours',
    '62 % in range (8 points under its goal), 37 % above (12 points over), three lows of level 1, one of them at night; very high for hours on 7 of 14 days.',
    ['long-very-high', 'lows-at-night/once', 'lows-averages-hide', ...ALSO],
    'highs',
  ),
  row(
    'ours',
    'The same, high from noon to 4 PM and never very high for long.',
    ['high-after-window', ...ALSO],
    'highs',
  ),
  row('ours', 'The same, highs within 2 hours after lows.', ['rebound-after-lows', ...ALSO], 'highs'),
  row('ours', 'The same, a rise toward breakfast.', ['dawn-rise', ...ALSO], 'highs'),
  row('ours', 'The same, at no time of day in particular.', ['lows-averages-hide', ...ALSO], 'highs'),
  row('ours', '71 % in range, CV 44 % (8 points over its limit).', ['wide-spread', 'lows-seen'], 'spread'),
  row('ours', 'The same, alike at all times of day.', ['cv-over-limit', 'lows-seen'], 'spread'),
  row(DANNE, 'All goals met; one night with a low of 65 mg/dL.', ['lows-at-night/once', 'long-very-high', ...ALSO]),
  row(ORDER, 'All goals met; very high for three hours on one day; one low by day.', ['long-very-high', 'lows-seen']),
  row(ORDER, 'All goals met; three lows of level 1 by day.', ['lows-averages-hide', 'lows-seen', 'dawn-rise']),
  row(ORDER, 'All goals met; one low by day.', ['lows-seen', 'high-after-window', 'dawn-rise']),
  row(ORDER, 'All goals met; high from noon to 4 PM.', ['high-after-window', 'rebound-after-lows', 'dawn-rise']),
  row(ORDER, 'All goals met; highs within 2 hours after brief lows.', ['rebound-after-lows', 'dawn-rise']),
  row(ORDER, 'All goals met; a rise toward breakfast.', ['dawn-rise', 'wide-spread']),
  row(ORDER, '66 % in range, too few days to judge.', ['time-in-range/missed', 'wide-spread']),
  row(ORDER, 'All goals met; days differ most in the evening.', ['wide-spread', 'cv-over-limit']),
  row(ORDER, 'A CV of 37 % in a set of goals that is not judged.', ['cv-over-limit', 'best-window']),
  row('Aleppo & Webb 2019 (what went well)', 'From 2 to 6 AM in range on all days.', ['best-window', 'best-days']),
  row('Aleppo & Webb 2019 (what went well)', 'Ten days in range without a low.', ['best-days', 'time-in-range/met']),
];
