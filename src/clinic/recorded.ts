import type { Facts, Outcome, Said } from '../model/clinic.ts';
import type { Quantity } from '../model/quantity.ts';
import { atLeast, finite, list, named, oneOf, orNull, type Place, someText, yesOrNo } from '../schemas/checks.ts';
import { targetSets } from '../targets/index.ts';
import { isLocalDate } from '../time/calendar.ts';

const anyText = someText(() => true);
const date = someText(isLocalDate);

/** A name that stays in the folder it is put into, whatever the record says. */
const plainName = someText((name) => /^[^./\\:\0][^/\\:\0]*$/.test(name));

/** Whether one of these fits. */
const either = (...places: Place[]): Place => {
  return (value, at) => (places.some((fits) => fits(value, at).length === 0) ? [] : [at]);
};
const plain = either(anyText, finite);
/** Of what was found or expected only that it is flat: whether there are words for it is asked afterwards. */
const told = either(plain, named(plain));
const shown = either(told, list(told));

const filled = either(
  atLeast<Extract<Quantity, { q: 'word' }>>({ q: oneOf('word'), value: anyText }),
  atLeast<Extract<Quantity, { q: 'count' }>>({ q: oneOf('count'), value: finite }),
  atLeast<Extract<Quantity, { q: 'shown' }>>({ q: oneOf('shown'), value: shown }),
  atLeast<Extract<Quantity, { q: 'question' }>>({ q: oneOf('question'), value: named(anyText) }),
);
const said = atLeast<Said>({
  key: someText((key) => /^(clinic\.unread|issues|cli\.error)\.[\w-]+$/.test(key)),
  params: named(filled),
});

const compared = oneOf('in-range', 'low', 'very-low', 'high', 'very-high', 'mean', 'cv', 'lows', 'very-lows', 'highs');

const facts = atLeast<Facts>({
  hash: anyText,
  targets: oneOf(...Object.keys(targetSets)),
  unit: oneOf('mg/dL', 'mmol/L'),
  from: date,
  to: date,
  days: finite,
  interval: finite,
  readings: finite,
  rows: finite,
  setAside: finite,
  coverage: atLeast<Facts['coverage']>({
    share: finite,
    hours: finite,
    ofHours: finite,
    nightShare: finite,
    days: finite,
    enough: yesOrNo,
  }),
  mean: orNull(atLeast<NonNullable<Facts['mean']>>({ mgdl: finite, low: orNull(finite), high: orNull(finite) })),
  sd: orNull(finite),
  cv: orNull(finite),
  gmi: orNull(finite),
  shares: orNull(
    atLeast<NonNullable<Facts['shares']>>({
      veryLow: finite,
      low: finite,
      inRange: finite,
      high: finite,
      veryHigh: orNull(finite),
    }),
  ),
  below: orNull(finite),
  above: orNull(finite),
  unmet: list(oneOf('in-range', 'low', 'very-low', 'high', 'very-high')),
  lows: orNull(
    atLeast<NonNullable<Facts['lows']>>({
      count: finite,
      level2: finite,
      night: finite,
      dates: list(date),
      level2Dates: list(date),
    }),
  ),
  highs: orNull(
    atLeast<NonNullable<Facts['highs']>>({
      count: finite,
      level2: finite,
      longestLevel2: finite,
      level2Dates: list(date),
    }),
  ),
  change: orNull(
    atLeast<NonNullable<Facts['change']>>({
      with: orNull(date),
      worse: list(compared),
      better: list(compared),
      told: yesOrNo,
    }),
  ),
  failed: list(anyText),
  withheld: named(anyText),
});

const whole = atLeast<Outcome>({
  schema: oneOf(1),
  code: anyText,
  stem: plainName,
  visit: orNull(date),
  a1c: orNull(finite),
  inputs: list(anyText),
  inputHashes: list(anyText),
  persons: list(anyText),
  key: anyText,
  printed: date,
  version: anyText,
  facts: orNull(facts),
  refusals: list(said),
  outputs: list(atLeast<Outcome['outputs'][number]>({ name: plainName, bytes: finite, sha256: anyText })),
});

/**
 * What a run left, read again: an outcome, or null when it does not have its shape or there are no words for what it
 * says (`sayable`). Such files lie in a folder others can write to, and the names in them are written to and deleted,
 * so none may lead out of it.
 */
export function asOutcome(content: unknown, sayable: (said: Said) => boolean): Outcome | null {
  if (whole(content, '').length > 0) return null;
  const outcome = content as Outcome;
  return outcome.refusals.every(sayable) ? outcome : null;
}
