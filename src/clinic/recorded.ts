import type { Facts, Outcome, Said } from '../model/clinic.ts';
import { targetSets } from '../targets/index.ts';
import { isLocalDate } from '../time/calendar.ts';

type Check = (value: unknown) => boolean;
type Fields<T> = { [K in keyof T]-?: Check };

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const text: Check = (value) => typeof value === 'string';
const number: Check = Number.isFinite;
const flag: Check = (value) => typeof value === 'boolean';
const date: Check = (value) => typeof value === 'string' && isLocalDate(value);
const orNull =
  (check: Check): Check =>
  (value) =>
    value === null || check(value);
const list =
  (check: Check): Check =>
  (value) =>
    Array.isArray(value) && value.every(check);
const oneOf =
  (...words: string[]): Check =>
  (value) =>
    words.includes(value as string);
/** All these fields, and whatever a later program has added. */
const shape =
  <T>(fields: Fields<T>): Check =>
  (value) =>
    isRecord(value) &&
    Object.entries<Check>(fields).every(([name, check]) => Object.hasOwn(value, name) && check(value[name]));

/** A name that stays in the folder it is put into, whatever the record says. */
const plainName: Check = (value) => typeof value === 'string' && /^[^./\\:\0][^/\\:\0]*$/.test(value);

const filled: Check = (value) =>
  isRecord(value) && ((value.q === 'word' && text(value.value)) || (value.q === 'count' && number(value.value)));
const said = shape<Said>({
  key: (key) => typeof key === 'string' && /^(clinic\.unread|issues|cli\.error)\.[\w-]+$/.test(key),
  params: (params) => isRecord(params) && Object.values(params).every(filled),
});

const compared = oneOf('in-range', 'low', 'very-low', 'high', 'very-high', 'mean', 'cv', 'lows', 'very-lows', 'highs');

const facts = shape<Facts>({
  hash: text,
  targets: oneOf(...Object.keys(targetSets)),
  unit: oneOf('mg/dL', 'mmol/L'),
  from: date,
  to: date,
  days: number,
  interval: number,
  readings: number,
  rows: number,
  setAside: number,
  coverage: shape<Facts['coverage']>({
    share: number,
    hours: number,
    ofHours: number,
    nightShare: number,
    days: number,
    enough: flag,
  }),
  mean: orNull(shape<NonNullable<Facts['mean']>>({ mgdl: number, low: orNull(number), high: orNull(number) })),
  sd: orNull(number),
  cv: orNull(number),
  gmi: orNull(number),
  shares: orNull(
    shape<NonNullable<Facts['shares']>>({
      veryLow: number,
      low: number,
      inRange: number,
      high: number,
      veryHigh: orNull(number),
    }),
  ),
  below: orNull(number),
  above: orNull(number),
  unmet: list(oneOf('in-range', 'low', 'very-low', 'high', 'very-high')),
  lows: orNull(
    shape<NonNullable<Facts['lows']>>({
      count: number,
      level2: number,
      night: number,
      dates: list(date),
      level2Dates: list(date),
    }),
  ),
  highs: orNull(
    shape<NonNullable<Facts['highs']>>({
      count: number,
      level2: number,
      longestLevel2: number,
      level2Dates: list(date),
    }),
  ),
  change: orNull(
    shape<NonNullable<Facts['change']>>({
      with: orNull(date),
      worse: list(compared),
      better: list(compared),
      told: flag,
    }),
  ),
  failed: list(text),
  withheld: (value) => isRecord(value) && Object.values(value).every(text),
});

const whole = shape<Outcome>({
  schema: (value) => value === 1,
  code: text,
  stem: plainName,
  visit: orNull(date),
  a1c: orNull(number),
  inputs: list(text),
  inputHashes: list(text),
  persons: list(text),
  key: text,
  printed: date,
  version: text,
  facts: orNull(facts),
  refusals: list(said),
  outputs: list(shape<Outcome['outputs'][number]>({ name: plainName, bytes: number, sha256: text })),
});

/**
 * What a run left, read again: an outcome, or null when it does not have its shape or there are no words for what it
 * says (`sayable`). Such files lie in a folder others can write to, and the names in them are written to and deleted,
 * so none may lead out of it.
 */
export function asOutcome(content: unknown, sayable: (said: Said) => boolean): Outcome | null {
  if (!whole(content)) return null;
  const outcome = content as Outcome;
  return outcome.refusals.every(sayable) ? outcome : null;
}
