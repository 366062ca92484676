import type { Analysis } from '../../src/analyse.ts';
import type { Measured } from '../../src/model/measured.ts';
import type { Settings } from '../../src/model/settings.ts';
import { BANDS } from '../../src/targets/bands.ts';

/** What measures.py worked out from the same files by itself. */
export interface Figures {
  from: string;
  to: string;
  set: Settings['targets'];
  readings: number;
  interval: number;
  mixed: boolean;
  coverage: { share: number; hours: number; ofHours: number; fullDays: number; byDay: number[] };
  mean: number;
  censored: number;
  sd: number;
  cv: number;
  gmi: { percent: number; mmolPerMol: number } | null;
  minutes: Record<string, number>;
  shares: Record<string, number>;
  modalDay: { binMinutes: number; raw: Record<string, number | null>[] } | null;
  lows: Record<string, unknown>[];
  highs: Record<string, unknown>[];
  nights: Record<string, unknown>[];
}

function toldOrNull<T>(measured: Measured<T>): T | null {
  return measured.ok ? measured.value : null;
}

/** What the program found, in the shape of the figures; it may hold more. */
export function foundIn({ timeline, measures, targets }: Analysis): Record<keyof Figures, unknown> {
  const coverage = toldOrNull(measures.coverage);
  const mean = toldOrNull(measures.mean);
  const bands = toldOrNull(measures.timeInBands);
  return {
    from: timeline.from,
    to: timeline.to,
    set: targets.id,
    readings: timeline.readings.count,
    interval: timeline.interval,
    mixed: timeline.mixed,
    coverage: coverage && { ...coverage, byDay: coverage.byDay.map(({ share }) => share) },
    mean: mean?.mgdl.value,
    censored: mean?.censored,
    sd: toldOrNull(measures.sd),
    cv: toldOrNull(measures.cv),
    gmi: toldOrNull(measures.gmi),
    minutes: bands?.minutes,
    shares: bands && Object.fromEntries(BANDS.map((band) => [band, bands.exclusive[band].value])),
    modalDay: toldOrNull(measures.modalDay),
    lows: toldOrNull(measures.lows)?.list,
    highs: toldOrNull(measures.highs)?.list,
    nights: toldOrNull(measures.nights),
  };
}

/**
 * Where the found differs from the expected: numbers by more than `parts` of the expected (of 1 where it is smaller),
 * everything else at all. Only what is expected is looked at.
 */
export function differences(found: unknown, expected: unknown, parts: number, path = ''): string[] {
  if (typeof expected === 'number') {
    const near = Math.abs((found as number) - expected) <= parts * Math.max(1, Math.abs(expected));
    return near ? [] : [`${path}: ${found}, not ${expected}`];
  }
  if (expected === null || typeof expected !== 'object') {
    return found === expected ? [] : [`${path}: ${found}, not ${expected}`];
  }
  if (found === null || typeof found !== 'object') return [`${path}: ${found}, not ${JSON.stringify(expected)}`];
  if (Array.isArray(expected) && (found as unknown[]).length !== expected.length) {
    return [`${path}: ${(found as unknown[]).length} of them, not ${expected.length}`];
  }
  return Object.entries(expected).flatMap(([key, part]) =>
    differences((found as Record<string, unknown>)[key], part, parts, `${path}.${key}`),
  );
}
