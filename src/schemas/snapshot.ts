import * as z from 'zod';
import type { LocalDate } from '../model/glucose.ts';
import type { DaySums, PeriodSums } from '../model/thenAndNow.ts';
import './jitless.ts';

const SNAPSHOT_FORMAT = 'daybands-snapshot';
/** Grows when an older program could no longer read the file rightly. */
const SNAPSHOT_VERSION = 1;

const amount = z.number().finite().min(0);
const whole = z.int().min(0).max(1000);

const day = z.strictObject({
  date: z.iso.date().transform((date) => date as LocalDate),
  length: z.number().min(1).max(3000),
  minutes: amount,
  known: amount,
  sum: amount,
  squares: amount,
  bands: z.tuple([amount, amount, amount, amount, amount]),
  lows: whole,
  veryLows: whole,
  highs: whole,
}) satisfies z.ZodType<DaySums>;

const snapshot = z.strictObject({
  format: z.literal(SNAPSHOT_FORMAT),
  version: z.literal(SNAPSHOT_VERSION),
  made: z.strictObject({ by: z.string().max(40), hash: z.string().max(40), on: z.iso.date() }),
  targets: z.enum(['adult', 'older', 'pregnancy-type-1', 'pregnancy-other']),
  unit: z.enum(['mg/dL', 'mmol/L']),
  interval: z.number().min(0.5).max(120),
  sensors: z.int().min(0).max(1000),
  days: z
    .array(day)
    .min(1)
    .max(400)
    .refine((days) => days.every(({ date }, i) => i === 0 || days[i - 1]!.date < date), 'days in order, each once')
    .refine((days) => days.every(consistent), 'sums that fit together'),
});

/** Sums that no readings can have would make a change out of nothing. */
function consistent({ minutes, known, sum, squares, bands }: DaySums): boolean {
  const inBands = bands.reduce((total, each) => total + each, 0);
  const fits = (a: number, b: number) => a <= b * (1 + 1e-6) + 1e-3;
  return fits(inBands, minutes) && fits(minutes, inBands) && fits(known, minutes) && fits(sum * sum, squares * known);
}

/** What a later visit needs of this one: sums of days, and no name, note, file name or free text. */
export function snapshotText(sums: PeriodSums, origin: { by: string; hash: string; on: string }): string {
  const { targets, unit, interval, sensors, days } = sums;
  const head = { format: SNAPSHOT_FORMAT, version: SNAPSHOT_VERSION, made: origin, targets, unit, interval, sensors };
  const rows = days.map((each) => `  ${JSON.stringify(each)}`).join(',\n');
  return `${JSON.stringify(head, null, 1).replace(/\n\}$/, '')},\n "days": [\n${rows}\n ]\n}\n`;
}

/**
 * Reads a snapshot file; `problem` says in short what does not fit. `newer`: written by a later program in a form that
 * this one does not know (`known` is the latest it does). Every form that was ever written must stay readable here.
 */
export function readSnapshot(
  text: string,
): { sums: PeriodSums } | { problem: string } | { newer: string; known: string } {
  let content: unknown;
  try {
    content = JSON.parse(text);
  } catch {
    return { problem: 'JSON' };
  }
  const { format, version } = (content ?? {}) as { format?: unknown; version?: unknown };
  if (format === SNAPSHOT_FORMAT && typeof version === 'number' && version > SNAPSHOT_VERSION) {
    return { newer: String(version), known: String(SNAPSHOT_VERSION) };
  }
  const checked = snapshot.safeParse(content);
  if (!checked.success) {
    const first = checked.error.issues[0]!;
    return { problem: [first.path.join('.'), first.code === 'custom' ? first.message : first.code].join(' ').trim() };
  }
  const { targets, unit, interval, sensors, days } = checked.data;
  return { sums: { targets, unit, interval, sensors, days } };
}
