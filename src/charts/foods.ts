import type { Drawing, Mark } from '../model/drawing.ts';
import type { Comparison, Meal } from '../model/occasions.ts';
import type { Timeline } from '../model/timeline.ts';
import { profileOf } from '../occasions/profile.ts';
import { quantile } from '../stats/quantile.ts';
import { pieces, rangeLines, type Span, spanAxis } from './aligned.ts';
import { profileAlong } from './along.ts';
import { glucoseAxis, type Plot } from './axis.ts';
import { type ChartContext, roughWidth } from './context.ts';
import { CONTENT_WIDTH } from './frame.ts';
import { round } from './pen.ts';

const COLUMNS = 4;
const GAP = 10;
const HEIGHT = 58;
const SPAN: Span = { from: -15, to: 180 };
/** Minutes between points that are read off. */
const STEP = 15;
export const MOST_FOODS = 12;

/** A food with the meals compared under its name. */
export interface FoodMeals {
  comparison: Comparison;
  meals: Meal[];
}

/** One small panel a food, every meal a line, with the middle start and peak. */
export function foodsChart(timeline: Timeline, foods: FoodMeals[], context: ChartContext): Drawing {
  const { speaker, text } = context;
  const left = text * 3.2;
  const width = (CONTENT_WIDTH - left - GAP * (COLUMNS - 1)) / COLUMNS;
  const rowHeight = HEIGHT + 2 * (text + 2) + 12;
  const shown = foods.slice(0, MOST_FOODS);
  const rows = Math.ceil(shown.length / COLUMNS);
  const plotOf = (index: number): Plot => ({
    left: round(left + (index % COLUMNS) * (width + GAP)),
    top: round(Math.floor(index / COLUMNS) * rowHeight + 2 * (text + 2) + 3),
    width: round(width),
    height: HEIGHT,
  });
  const marks = shown.flatMap((food, index): Mark[] => {
    const plot = plotOf(index);
    const axis = index % COLUMNS === 0 ? glucoseAxis(plot, context) : [rangeLines(plot, context)];
    const last = Math.floor(index / COLUMNS) === rows - 1 || index + COLUMNS >= shown.length;
    return [...axis, ...panel(timeline, food, plot, context), ...(last ? spanAxis(plot, SPAN, 60, context) : [])];
  });
  return {
    width: CONTENT_WIDTH,
    height: round(rows * rowHeight + text + 2),
    how: 'foods',
    summary: speaker.say('charts.foods.summary', {
      foods: { q: 'count', value: foods.length },
      meals: { q: 'count', value: foods.reduce((sum, { comparison }) => sum + comparison.a.n, 0) },
    }),
    get table() {
      return {
        columns: (['food', 'n', 'start', 'rise', 'medianHigh', 'spread'] as const).map((column) =>
          speaker.say(`charts.foods.${column}`),
        ),
        rows: foods.map(({ comparison: { a }, meals }) => [
          a.name,
          speaker.number(a.n, 0),
          glucose(middle(meals, 'baseline'), context),
          glucose(middle(meals, 'increment'), context),
          minutes(a.median, context),
          `${minutes(a.low, context)} – ${minutes(a.high, context)}`,
        ]),
      };
    },
    get along() {
      return shown.flatMap(({ comparison, meals }, index) => {
        const anchors = meals.map(({ at }) => at);
        const profile = profileOf(timeline, anchors, SPAN.from, SPAN.to, STEP);
        return profileAlong(profile, plotOf(index), comparison.a.name, context);
      });
    },
    marks,
  };
}

/** Median over the meals that were seen; null where none was. */
function middle(meals: readonly Meal[], of: 'baseline' | 'increment' | 'peak'): number | null {
  const values = Float64Array.from(meals.flatMap(({ course }) => course?.[of] ?? [])).sort();
  return values.length === 0 ? null : quantile(values, 0.5);
}

function glucose(value: number | null, { speaker }: ChartContext): string {
  return value === null ? '–' : speaker.value({ q: 'rise', value }, 'short');
}

function minutes(value: number | null, { speaker }: ChartContext): string {
  return value === null ? '–' : speaker.value({ q: 'minutes', value }, 'short');
}

function panel(timeline: Timeline, { comparison, meals }: FoodMeals, plot: Plot, context: ChartContext): Mark[] {
  const { speaker, text } = context;
  const title = fitted(comparison.a.name, plot.width, text);
  const times = speaker.say('charts.foods.times', { n: { q: 'count', value: comparison.a.n } });
  const course = speaker.say('charts.foods.course', {
    start: { q: 'word', value: glucose(middle(meals, 'baseline'), context) },
    peak: { q: 'word', value: glucose(middle(meals, 'peak'), context) },
  });
  const line = (row: number, content: string, strong: boolean): Mark => ({
    kind: 'text',
    role: strong ? 'ink' : 'axis',
    x: plot.left,
    y: round(plot.top - 3 - (1 - row) * (text + 2)),
    text: content,
    size: text,
    anchor: 'start',
    strong,
  });
  const foot = round(plot.top + plot.height);
  return [
    line(0, title, true),
    line(1, `${times}, ${course}`, false),
    { kind: 'line', role: 'axis', lines: [[plot.left, foot, round(plot.left + plot.width), foot]], width: 0.5 },
    { kind: 'line', role: 'trace', lines: meals.flatMap(({ at }) => pieces(timeline, at, SPAN, plot)), width: 0.9 },
  ];
}

/** As much of a name as a panel is wide. */
function fitted(name: string, width: number, size: number): string {
  if (roughWidth(name, size) <= width) return name;
  return `${name.slice(0, Math.floor(width / (size * 0.55)) - 1).trimEnd()}…`;
}
