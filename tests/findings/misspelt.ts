import { count, limit } from '../../src/findings/evidence/quantities.ts';
import { type Finding, holds } from '../../src/findings/finding.ts';
import type { FindingId, Found } from '../../src/findings/index.ts';
import { findingText, held, type PageContext, tellAll } from '../../src/pages/context.ts';
import type { Topic } from '../../src/topics/index.ts';
import type { Examples } from './examples/index.ts';
import { lows } from './examples/lows.ts';

/** Never run: `tsc` is the test. Should a misspelt id compile, its comment is an error that is not there. */
export const misspelt = (context: PageContext, found: Found) => [
  // @ts-expect-error
  held(context, 'very-lows'),
  // @ts-expect-error
  findingText(context, 'very-lows', 'what'),
  // @ts-expect-error
  tellAll(context, ['very-low', 'lows-sen']),
  // @ts-expect-error
  { id: 'dawn-rises', look: { case: 'absent' } } satisfies Found,
  // @ts-expect-error
  { id: 'dawn-rises', rule: 'lows-first' } satisfies Topic,
  // @ts-expect-error
  found.id === 'time-in-rnage',
  // @ts-expect-error
  { 'dawn-rises': 1 } satisfies Partial<Record<FindingId, number>>,
  // @ts-expect-error
  lows satisfies Examples,
  // @ts-expect-error: no `most` for its sentence.
  (() => holds({ nights: count(3), alarms: count(4) }, [])) satisfies Finding<'alarms-at-night'>['look'],
  // @ts-expect-error: `limt`.
  (() => holds({ limt: limit('low') }, [])) satisfies Finding<'long-lows'>['look'],
];
