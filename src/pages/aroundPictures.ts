import { type FoodMeals, foodsChart, MOST_FOODS } from '../charts/foods.ts';
import { type Laid, mealOverlayChart, OVERLAY } from '../charts/mealOverlay.ts';
import { beyondIn, modalDayChart } from '../charts/modalDay.ts';
import { noteDensityChart } from '../charts/noteDensity.ts';
import { sessionPairsChart } from '../charts/sessionPairs.ts';
import { MOST_SESSIONS, sessionsChart } from '../charts/sessions.ts';
import type { Drawing } from '../model/drawing.ts';
import type { Slot } from '../model/logbook.ts';
import type { Meal } from '../model/occasions.ts';
import type { Block } from '../model/report.ts';
import { profileOf } from '../occasions/profile.ts';
import { NIGHT_END } from '../targets/consensus.ts';
import { count, heading, type PageContext, paragraph, space } from './context.ts';

/** Parts of the day with fewer meals are not laid over one another; at most so many stand side by side. */
const LEAST_LAID = 3;
const MOST_LAID = 3;
const STEP = 15;

const usable = (meals: readonly Meal[]): Meal[] =>
  meals.filter(({ unusable, inferred }) => unusable.length === 0 && !inferred);

/** A chart under its heading and how it is to be read. */
const picture = (title: string, how: string, drawing: Drawing): Block => ({
  kind: 'together',
  blocks: [heading(2, title), paragraph(how, 'small'), { kind: 'chart', drawing }],
});

/** `height`: that of a plot, points. */
export function sessionPairs({ speaker, analysis, chart }: PageContext, height?: number): Block[] {
  const { exercise } = analysis.measures;
  if (!exercise.ok || exercise.value.length === 0) return [];
  return [
    {
      kind: 'chart',
      title: speaker.say('pages.aroundNotes.pairs'),
      drawing: sessionPairsChart(analysis.timeline, exercise.value, chart, height),
    },
  ];
}

/** How many sessions there were where they were too few to compare. */
export function tooFewSessions({ speaker, analysis }: PageContext): Block[] {
  const { comparisons } = analysis.measures;
  const first = comparisons.ok ? comparisons.value.find(({ id }) => id === 'extra-carbs') : undefined;
  if (first?.verdict !== 'too-few') return [];
  return [paragraph(speaker.say('pages.aroundNotes.fewSessions', { a: count(first.a.n), b: count(first.b.n) }))];
}

/** One session is told whole by the picture before. */
export function sessions({ speaker, analysis, chart }: PageContext): Block[] {
  const { exercise } = analysis.measures;
  if (!exercise.ok || exercise.value.length < 2) return [];
  const how = speaker.say('pages.aroundNotes.sessionsHow', {
    six: { q: 'clock', value: NIGHT_END },
    limit: { q: 'limit', of: 'low' },
    hidden: count(Math.max(0, exercise.value.length - MOST_SESSIONS)),
  });
  return [
    picture(speaker.say('pages.aroundNotes.sessions'), how, sessionsChart(analysis.timeline, exercise.value, chart)),
  ];
}

/** Meals of each part of the day laid over one another, and how they are to be read. `height`: that of a plot, points. */
export function mealsLaid(
  { speaker, analysis, chart }: PageContext,
  meals: readonly Meal[],
  height?: number,
): { title: string; how: string; drawing: Drawing } | null {
  const slots = new Map<Slot, Meal[]>();
  for (const meal of usable(meals)) slots.set(meal.slot, [...(slots.get(meal.slot) ?? []), meal]);
  const laid = [...slots]
    .filter(([, some]) => some.length >= LEAST_LAID)
    .sort(([, a], [, b]) => b.length - a.length)
    .slice(0, MOST_LAID)
    .sort(([, a], [, b]) => a[0]!.minute - b[0]!.minute)
    .map(([slot, some]): Laid => {
      const anchors = some.map(({ at }) => at);
      return { slot, anchors, profile: profileOf(analysis.timeline, anchors, OVERLAY.from, OVERLAY.to, STEP) };
    });
  if (laid.length === 0) return null;
  return {
    title: speaker.say('pages.aroundNotes.overlay'),
    how: speaker.say('pages.aroundNotes.overlayHow'),
    drawing: mealOverlayChart(analysis.timeline, laid, chart, height),
  };
}

export function laidOver(context: PageContext, meals: readonly Meal[]): Block[] {
  const laid = mealsLaid(context, meals);
  return laid === null ? [] : [picture(laid.title, laid.how, laid.drawing)];
}

/** The usual day once more, low, with the notes on its own clock. */
export function overTheClock({ speaker, analysis, chart }: PageContext): Block[] {
  const { modalDay, noteLog } = analysis.measures;
  if (!modalDay.ok || !noteLog.ok) return [];
  return [
    {
      kind: 'together',
      blocks: [
        heading(2, speaker.say('pages.aroundNotes.clock')),
        {
          kind: 'chart',
          drawing: modalDayChart(modalDay.value, chart, {
            height: 84,
            outer: true,
            beyond: beyondIn(analysis.timeline),
          }),
        },
        space(2),
        { kind: 'chart', drawing: noteDensityChart(noteLog.value, chart) },
      ],
    },
  ];
}

/** Foods noted often enough to compare, by how often: an order by their curves would rank what is not told apart. */
export function foods({ speaker, analysis, chart }: PageContext, meals: readonly Meal[]): Block[] {
  const { comparisons } = analysis.measures;
  if (!comparisons.ok) return [];
  const listed = comparisons.value
    .filter(({ id, verdict }) => id === 'food' && verdict !== 'too-few')
    // A food of several parts of the day is drawn for the one that comes first, with most days; all stand in the table.
    .filter(({ a }, i, all) => all.findIndex((one) => one.a.name === a.name) === i)
    .map((comparison): FoodMeals => {
      const at = usable(meals).filter(
        ({ slot, foods }) => slot === comparison.slot && foods.includes(comparison.a.name),
      );
      return { comparison, meals: at };
    })
    .sort((a, b) => b.comparison.a.n - a.comparison.a.n || (a.comparison.a.name < b.comparison.a.name ? -1 : 1));
  if (listed.length === 0) return [];
  const how = speaker.say('pages.aroundNotes.foodsHow', {
    hidden: count(Math.max(0, listed.length - MOST_FOODS)),
  });
  return [picture(speaker.say('pages.aroundNotes.foods'), how, foodsChart(analysis.timeline, listed, chart))];
}
