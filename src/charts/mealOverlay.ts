import type { Drawing, Mark } from '../model/drawing.ts';
import type { MgPerDl } from '../model/glucose.ts';
import type { Slot } from '../model/logbook.ts';
import type { Timeline } from '../model/timeline.ts';
import type { ProfilePoint } from '../occasions/profile.ts';
import { pieces, rangeLines, type Span, spanAxis, spanScale } from './aligned.ts';
import { profileAlong } from './along.ts';
import { glucoseAxis, glucoseScale, type Plot } from './axis.ts';
import type { ChartContext } from './context.ts';
import { NARROW_WIDTH, narrowOr } from './frame.ts';
import { linesThrough, ringsAround, round } from './pen.ts';

/** From the hour before a meal to four hours after. */
export const OVERLAY: Span = { from: -60, to: 240 };
/** What reads a curve along is wider than the plot by the half of what one grips. */
const GRIP = 6;
const GAP = 14;
/** Of a plot, points, where nothing is said. */
const HEIGHT = 92;

/** Meals of one part of the day, with the instants of their notes. */
export interface Laid {
  slot: Slot;
  anchors: number[];
  profile: ProfilePoint[];
}

/** Every meal a thin line, laid over one another at the note, with the middle half as a ribbon and the median on top. */
export function mealOverlayChart(timeline: Timeline, laid: Laid[], context: ChartContext, tall = HEIGHT): Drawing {
  const { speaker, text } = context;
  const left = text * 3.2;
  const { narrow, whole } = narrowOr(context.width);
  // On a narrow screen one part of the day stands under another.
  const width = narrow ? whole - left - GRIP : (whole - left - GAP * (laid.length - 1)) / laid.length;
  const rowHeight = text + 5 + tall + text + 7;
  const plotOf = (index: number): Plot => ({
    left: round(narrow ? left : left + index * (width + GAP)),
    top: round((narrow ? index * rowHeight : 0) + text + 5),
    width: round(width),
    height: tall,
  });
  const titleOf = (one: Laid): string =>
    speaker.say('charts.overlay.title', {
      slot: { q: 'word', value: one.slot },
      n: { q: 'count', value: one.anchors.length },
    });
  const marksOf = (one: Laid, index: number): Mark[] => {
    const plot = plotOf(index);
    const title = titleOf(one);
    const down = narrow ? index * rowHeight : 0;
    return [
      {
        kind: 'text',
        role: 'ink',
        x: plot.left,
        y: round(down + text),
        text: title,
        size: text,
        anchor: 'start',
        strong: true,
      },
      { kind: 'shape', role: 'inner-ribbon', rings: ribbon(one.profile, plot) },
      ...(narrow || index === 0 ? glucoseAxis(plot, context) : [rangeLines(plot, context)]),
      {
        kind: 'line',
        role: 'gap',
        lines: one.anchors.flatMap((at) => pieces(timeline, at, OVERLAY, plot)),
        width: 0.75,
      },
      { kind: 'line', role: 'grid', lines: [atNote(plot)], width: 0.9 },
      { kind: 'line', role: 'median', lines: middle(one.profile, plot), width: 2.2 },
      ...spanAxis(plot, OVERLAY, 60, context),
    ];
  };
  return {
    width: whole,
    get narrow() {
      return narrow ? undefined : mealOverlayChart(timeline, laid, { ...context, width: NARROW_WIDTH }, tall);
    },
    height: round(rowHeight * (narrow ? laid.length : 1)),
    how: 'overlay',
    get summary() {
      return laid.map((one) => sentence(one, context)).join(' ');
    },
    get table() {
      return {
        columns: [
          speaker.say('charts.overlay.after'),
          ...laid.map(({ slot }) => speaker.say('charts.overlay.column', { slot: { q: 'word', value: slot } })),
        ],
        rows: (laid[0]?.profile ?? []).flatMap((point, i) =>
          point.minute % 30 !== 0
            ? []
            : [
                [
                  speaker.say('charts.overlay.minutes', {
                    minutes: { q: 'word', value: speaker.number(point.minute, 0) },
                  }),
                  ...laid.map(({ profile }) => half(profile[i], context)),
                ],
              ],
        ),
      };
    },
    get along() {
      return laid.flatMap((one, index) => profileAlong(one.profile, plotOf(index), titleOf(one), context));
    },
    get marks() {
      return laid.flatMap(marksOf);
    },
  };
}

function half(point: ProfilePoint | undefined, { speaker }: ChartContext): string {
  if (point?.p50 == null || point.p25 === null || point.p75 === null) return '–';
  const [low, mid, high] = [point.p25, point.p50, point.p75].map((value) =>
    speaker.value({ q: 'glucose', value: value as MgPerDl }, 'short'),
  );
  return `${mid} (${low} – ${high})`;
}

function sentence({ slot, anchors, profile }: Laid, { speaker }: ChartContext): string {
  const known = profile.filter(({ p50, minute }) => p50 !== null && minute >= 0);
  const first = known[0];
  if (!first) return '';
  const peak = known.reduce((a, b) => (b.p50! > a.p50! ? b : a));
  return speaker.say('charts.overlay.summary', {
    n: { q: 'count', value: anchors.length },
    slot: { q: 'word', value: slot },
    start: { q: 'glucose', value: first.p50 as MgPerDl },
    peak: { q: 'glucose', value: peak.p50 as MgPerDl },
    minutes: { q: 'minutes', value: peak.minute },
  });
}

function atNote(plot: Plot): number[] {
  const x = round(spanScale(plot, OVERLAY)(0));
  return [x, plot.top, x, round(plot.top + plot.height)];
}

function ribbon(profile: ProfilePoint[], plot: Plot): number[][] {
  const x = spanScale(plot, OVERLAY);
  const y = glucoseScale(plot);
  return ringsAround(
    profile.map(({ minute, p25, p75 }) => (p25 === null || p75 === null ? null : [x(minute), y(p25), y(p75)])),
  );
}

function middle(profile: ProfilePoint[], plot: Plot): number[][] {
  const x = spanScale(plot, OVERLAY);
  const y = glucoseScale(plot);
  return linesThrough(profile.map(({ minute, p50 }) => (p50 === null ? null : [x(minute), y(p50)])));
}
