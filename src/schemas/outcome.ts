import * as z from 'zod';
import type { Facts, FhirLeft, Outcome, TopicWent } from '../model/clinic.ts';
import { band, compared, glucoseUnit, targetId } from './parts.ts';
import './jitless.ts';
import { check } from './problems.ts';
import { agreed, summedMeasure } from './visit.ts';

/** A name that stays in the folder it is put into, whatever the record says. */
const plainName = z.string().regex(/^[^./\\:\0][^/\\:\0]*$/);
const date = z.iso.date();
const finite = z.number();
const number = finite.nullable();

/** Each name that the nouns have, so that a shape and its noun cannot part. */
const shape = <T>(places: Record<keyof T & string, z.ZodType>) => z.looseObject(places);

const plain = z.union([z.string(), finite]);
/** Of what was found or expected only that it is flat: whether there are words for it is asked afterwards. */
const detail = z.union([plain, z.record(z.string(), plain)]);

const said = z.looseObject({
  key: z.string().regex(/^(clinic\.unread|issues|cli\.error)\.[\w-]+$/),
  params: z.record(
    z.string(),
    z.union([
      z.looseObject({ q: z.literal('word'), value: z.string() }),
      z.looseObject({ q: z.literal('count'), value: finite }),
      z.looseObject({ q: z.literal('shown'), value: z.union([detail, z.array(detail)]) }),
      z.looseObject({ q: z.literal('question'), value: z.record(z.string(), z.string()) }),
    ]),
  ),
});

const facts = shape<Facts>({
  hash: z.string(),
  targets: targetId,
  unit: glucoseUnit,
  from: date,
  to: date,
  days: finite,
  interval: finite,
  readings: finite,
  rows: finite,
  setAside: finite,
  coverage: shape<Facts['coverage']>({
    share: finite,
    hours: finite,
    ofHours: finite,
    nightShare: finite,
    days: finite,
    enough: z.boolean(),
  }),
  mean: shape<NonNullable<Facts['mean']>>({ mgdl: finite, low: number, high: number }).nullable(),
  sd: number,
  cv: number,
  gmi: number,
  shares: shape<NonNullable<Facts['shares']>>({
    veryLow: finite,
    low: finite,
    inRange: finite,
    high: finite,
    veryHigh: number,
  }).nullable(),
  below: number,
  above: number,
  unmet: z.array(band),
  lows: shape<NonNullable<Facts['lows']>>({
    count: finite,
    level2: finite,
    night: finite,
    longest: finite.optional(),
    dates: z.array(date),
    level2Dates: z.array(date),
  }).nullable(),
  highs: shape<NonNullable<Facts['highs']>>({
    count: finite,
    level2: finite,
    longestLevel2: finite,
    withoutInsulin: finite.nullable().optional(),
    level2Dates: z.array(date),
  }).nullable(),
  change: shape<NonNullable<Facts['change']>>({
    with: date.nullable(),
    worse: z.array(compared),
    better: z.array(compared),
    told: z.boolean(),
  }).nullable(),
  failed: z.array(z.string()),
  withheld: z.record(z.string(), z.string()),
  // Not told from the beginning.
  losses: z.looseObject({ lost: finite, of: finite }).nullable().optional(),
  missing: z.array(z.string()).optional(),
  lastReading: shape<NonNullable<NonNullable<Facts['lastReading']>>>({ date, minute: finite }).nullable().optional(),
  nights: z
    .array(z.enum(['very-low', 'low', 'none-seen', 'unknown']))
    .max(14)
    .optional(),
  topic: z
    .looseObject({ id: z.string().regex(/^[a-z0-9-]+$/), words: z.record(z.string(), z.string()) })
    .nullable()
    .optional(),
  lastTime: agreed
    .pick({ goal: true, step: true })
    .extend({
      measure: shape<TopicWent>({
        of: z.union([summedMeasure, z.enum(['nights-low', 'after-note'])]),
        way: z.enum(['better', 'worse', 'within-noise', 'cannot-tell']),
      }).nullable(),
    })
    .nullable()
    .optional(),
});

const outcome = shape<Outcome>({
  schema: z.literal(1),
  code: z.string(),
  stem: plainName,
  visit: date.nullable(),
  time: z
    .string()
    .regex(/^\d\d:\d\d$/)
    .optional(),
  a1c: number,
  by: z.enum(['folder', 'file', 'joined', 'manifest', 'asked', 'nothing']).optional(),
  inputs: z.array(z.string()),
  inputHashes: z.array(z.string()),
  persons: z.array(z.string()),
  own: z.array(z.string()).optional(),
  traces: z.array(z.string()).optional(),
  key: z.string(),
  printed: date,
  version: z.string(),
  facts: facts.nullable(),
  before: z.array(facts).max(2).optional(),
  refusals: z.array(said),
  outputs: z.array(shape<Outcome['outputs'][number]>({ name: plainName, bytes: finite, sha256: z.string() })),
  fhirLeft: shape<FhirLeft>({
    readings: finite,
    notes: finite,
    results: z.array(z.string().regex(/^[a-z-]+$/)),
    unidentified: z.boolean(),
  }).optional(),
});

/**
 * What a run left, read again; null when it does not have its shape. Such files lie in a folder others can write to, and
 * the names in them are written to and deleted, so none may lead out of it. Names stay in the order they are in: the bytes of
 * what is written from it are those that were read.
 */
export function parseOutcome(content: unknown): Outcome | null {
  const checked = check(outcome, content, '');
  return checked.ok ? (content as Outcome) : null;
}
