import type { Drawing, Mark } from '../model/drawing.ts';
import type { Night } from '../model/measures.ts';
import type { Band } from '../model/targets.ts';
import { BANDS } from '../targets/bands.ts';
import type { ChartContext } from './context.ts';
import { round } from './pen.ts';

const WIDTH = 96;
const BAR = 9;
/** White between neighbours, so that bands of like darkness stay apart in grey. */
const GAP = 1.5;
const NIGHT = { w: 5.2, h: 7, gap: 1.6 };
const NIGHTS_TOP = BAR + 4;

export interface Glance {
  /** Share of the time in each band, 0 to 1; null where it is withheld. */
  shares: Record<Band, number> | null;
  nights: readonly Night['state'][];
}

/** One person in the corner of an eye: where the hours went, and under it a box a night, the last at the right. */
export function glanceChart({ shares, nights }: Glance, { speaker }: Pick<ChartContext, 'speaker'>): Drawing {
  const marks = [...(shares ? bar(shares) : []), ...nights.flatMap((state, i) => night(state, i))];
  const share = (band: Band) => ({ q: 'share' as const, value: shares?.[band] ?? 0 });
  const count = (state: Night['state']) => ({
    q: 'count' as const,
    value: nights.filter((one) => one === state).length,
  });
  return {
    width: WIDTH,
    height: nights.length > 0 ? NIGHTS_TOP + NIGHT.h + 0.5 : BAR + 0.5,
    summary: [
      ...(shares
        ? [
            speaker.say('charts.hoursBar.summary', {
              veryLow: share('very-low'),
              low: share('low'),
              inRange: share('in-range'),
              high: share('high'),
              veryHigh: share('very-high'),
            }),
          ]
        : []),
      ...(nights.length > 0
        ? [
            speaker.say('charts.nights.summary', {
              nights: { q: 'count', value: nights.length },
              veryLow: count('very-low'),
              low: count('low'),
              none: count('none-seen'),
              unknown: count('unknown'),
            }),
          ]
        : []),
    ].join(' '),
    marks,
  };
}

function bar(shares: Record<Band, number>): Mark[] {
  const shown = BANDS.filter((band) => shares[band] > 0);
  const room = WIDTH - 1 - GAP * (shown.length - 1);
  const wide = shown.map((band) => Math.max(1.5, shares[band] * room));
  const scale = room / wide.reduce((sum, width) => sum + width, 0);
  let x = 0.5;
  return shown.map((role, i): Mark => {
    const w = wide[i]! * scale;
    const mark: Mark = {
      kind: 'rect',
      role,
      x: round(x),
      y: 0.5,
      w: round(w),
      h: BAR - 0.5,
      outline: 'ink',
      outlineWidth: 0.75,
    };
    x += w + GAP;
    return mark;
  });
}

/** A very low night is a full box, a low one half full, one that cannot be told dotted. */
function night(state: Night['state'], place: number): Mark[] {
  const box = { x: round(0.5 + place * (NIGHT.w + NIGHT.gap)), y: NIGHTS_TOP, w: NIGHT.w, h: NIGHT.h };
  const unknown = state === 'unknown';
  const frame: Mark = {
    kind: 'rect',
    role: state === 'very-low' ? state : 'paper',
    ...box,
    outline: unknown ? 'axis' : 'ink',
    outlineWidth: 0.75,
    dotted: unknown,
  };
  if (state !== 'low') return [frame];
  const half: Mark = { kind: 'rect', role: 'low', ...box, h: round(NIGHT.h / 2), outline: 'ink', outlineWidth: 0.75 };
  return [frame, half];
}
