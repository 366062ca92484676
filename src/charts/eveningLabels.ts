import type { Mark } from '../model/drawing.ts';
import type { Episode } from '../model/measures.ts';
import { amountWidth, type ChartContext } from './context.ts';
import { ON_PAPER } from './eveningFrame.ts';
import { round } from './pen.ts';

/** Between a bar and its label, and between a label and what else stands in the row; points. */
const BESIDE_BAR = 3;
const GAP = 2.5;

interface Bar {
  low: Episode;
  from: number;
  to: number;
}

/** Lowest reading and length of a low, and of several together, for which there is a shorter form. */
export const lowsLabels = ({ speaker }: ChartContext) => {
  const lowestOf = ({ extreme, extremeLimit }: Episode): string => {
    const lowest = speaker.value({ q: 'glucose', value: extreme }, 'short');
    return extremeLimit === 0 ? lowest : `≤${lowest}`;
  };
  const word = (value: string) => ({ q: 'word' as const, value });
  const length = (minutes: number) => word(speaker.value({ q: 'minutes', value: minutes }, 'short'));
  return {
    one: (low: Episode): string =>
      speaker.say('charts.evenings.low', { lowest: word(lowestOf(low)), length: length(low.minutes) }),
    several: (lows: readonly Episode[], short: boolean): string =>
      speaker.say('charts.evenings.lows', {
        count: { q: 'count', value: lows.length },
        lowest: word(lowestOf(lows.reduce((least, one) => (one.extreme < least.extreme ? one : least)))),
        length: length(Math.max(...lows.map(({ minutes }) => minutes))),
        short: word(short ? 'yes' : 'no'),
      }),
  };
};

/** Lowest reading and length beside the bars of a row, the gravest first; where that has no room, one label tells of all bars of the row. */
export function eveningLabels(bars: Bar[], base: number, left: number, context: ChartContext): Mark[] {
  const { one, several } = lowsLabels(context);
  const taken: Span[] = bars.map(({ from, to }) => [from, to]);
  const byGravity = [...bars].sort((a, b) => b.low.level - a.low.level || b.low.minutes - a.low.minutes);
  const own = byGravity.map(({ low, from, to }) => label(one(low), { from, to }, taken, { base, left }, context));
  if (bars.length < 2 || own[0]!.length > 0) return own.flat();
  const lows = bars.map(({ low }) => low);
  const around = { from: Math.min(...bars.map(({ from }) => from)), to: Math.max(...bars.map(({ to }) => to)) };
  for (const short of [false, true]) {
    const all = label(several(lows, short), around, [[around.from, around.to]], { base, left }, context);
    if (all.length > 0) return all;
  }
  return own.flat();
}

type Span = [from: number, to: number];

/** Words right of a bar, or left of it; nothing where neither has room. What they take is added to what is `taken`. */
function label(
  words: string,
  { from, to }: { from: number; to: number },
  taken: Span[],
  { base, left }: { base: number; left: number },
  { text }: ChartContext,
): Mark[] {
  const width = amountWidth(words, text);
  for (const [x, anchor] of [
    [to + BESIDE_BAR, 'start'],
    [from - BESIDE_BAR, 'end'],
  ] as const) {
    const span: Span = anchor === 'start' ? [x, x + width] : [x - width, x];
    if (span[0] < left + 2 || span[1] > ON_PAPER.end) continue;
    const free = ([a, b]: Span): boolean => span[0] >= b + GAP || span[1] + GAP <= a || (a === from && b === to);
    if (!taken.every(free)) continue;
    taken.push(span);
    return [
      // No line of the clock runs through a figure.
      { kind: 'rect', role: 'paper', x: round(span[0] - 0.5), y: round(base - 6.2), w: round(width + 1), h: 5.7 },
      { kind: 'text', role: 'ink', x: round(x), y: round(base - 0.5), text: words, size: text, anchor },
    ];
  }
  return [];
}
