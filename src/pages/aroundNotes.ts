import { type FoodMeals, foodsChart, MOST_FOODS } from '../charts/foods.ts';
import { type Laid, mealOverlayChart, OVERLAY } from '../charts/mealOverlay.ts';
import { modalDayChart } from '../charts/modalDay.ts';
import { noteDensityChart } from '../charts/noteDensity.ts';
import { sessionPairsChart } from '../charts/sessionPairs.ts';
import { MOST_SESSIONS, sessionsChart } from '../charts/sessions.ts';
import { AROUND_LOG, AROUND_MEALS, AROUND_MOVEMENT, notesWorthWriting } from '../findings/index.ts';
import type { Slot } from '../model/logbook.ts';
import type { Meal } from '../model/occasions.ts';
import type { Block } from '../model/report.ts';
import { profileOf } from '../occasions/profile.ts';
import { comparisonsBlocks } from './comparisons.ts';
import {
  count,
  evidenceDays,
  heading,
  held,
  type PageContext,
  type PageMaker,
  paragraph,
  space,
  tellAll,
  told,
  word,
} from './context.ts';

/** Parts of the day with fewer meals are not laid over one another; at most so many stand side by side. */
const LEAST_LAID = 3;
const MOST_LAID = 3;
const STEP = 15;
/** Room for the names of the usual day's curves, so that both charts share one clock. */
const CURVE_LABELS = 66;
/** The log's own kinds; what sensors and meters note tells nothing of how it is kept. */
const TOLD_KINDS = ['meal', 'insulin', 'exercise', 'medication'];

/** What notes tell beside glucose: counts and hints first, then every occasion, then what was compared and how it came out. */
export const aroundNotes: PageMaker = (context) => {
  const { say, analysis } = context;
  const { noteLog, meals, exercise } = analysis.measures;
  if (!noteLog.ok || !meals.ok || !exercise.ok) return null;
  if (meals.value.length === 0 && exercise.value.length === 0) return null;
  return {
    id: 'around-notes',
    title: say.say('pages.aroundNotes.title'),
    blocks: [
      heading(1, say.say('pages.aroundNotes.title')),
      ...log(context),
      ...inOrder(context, [
        { ids: AROUND_MOVEMENT, pictures: sessionPairs(context) },
        { ids: AROUND_MEALS, pictures: [] },
      ]),
      ...coach(context),
      ...sessions(context),
      ...laidOver(context, meals.value),
      ...foods(context, meals.value),
      ...overTheClock(context),
      ...comparisonsBlocks(context),
    ],
  };
};

function log(context: PageContext): Block[] {
  const { say, analysis } = context;
  const { noteLog } = analysis.measures;
  if (!noteLog.ok) return [];
  const { days, noted, byKind } = noteLog.value;
  const kinds = byKind
    .filter(({ kind }) => TOLD_KINDS.includes(kind))
    .map((one) =>
      say.say('pages.aroundNotes.kind', {
        name: word(say.say(`notes.${one.kind}.name`)),
        days: count(one.days),
      }),
    );
  const text = say.say('pages.aroundNotes.log', {
    days: count(days),
    noted: count(noted),
    kinds: word(kinds.join(', ')),
  });
  const faults = tellAll(context, AROUND_LOG);
  return [paragraph([text, ...faults, say.say('cautions.C12')].join(' '))];
}

interface Part {
  ids: readonly string[];
  pictures: Block[];
}

/** Movement before meals, as lows come before highs; a part of which something can be told before one of which nothing can. */
function inOrder(context: PageContext, parts: Part[]): Block[] {
  const told = parts.map(({ ids, pictures }) => ({ said: statements(context, ids), pictures }));
  const first = told.findIndex(({ said }) => said.length > 0);
  if (first < 0) {
    const nothing = paragraph(context.say.say('pages.aroundNotes.nothing'));
    return [nothing, ...told.flatMap(({ pictures }) => pictures)];
  }
  const ordered = [told[first]!, ...told.filter((_, i) => i !== first)];
  return ordered.flatMap(({ said, pictures }) => [...said, ...pictures]);
}

/** What holds, each with its days and what could be asked. */
function statements(context: PageContext, ids: readonly string[]): Block[] {
  const { say } = context;
  return ids.flatMap((id): Block[] => {
    const look = held(context, id);
    const what = told(context, id, 'what');
    if (look === null || what === null) return [];
    const ask = told(context, id, 'ask');
    const days = evidenceDays(context, look.where);
    const more = [
      days === '' ? '' : say.say('pages.standsOut.seen', { days: word(days) }),
      ask === null ? '' : say.say('pages.standsOut.ask', { ask: word(ask) }),
    ];
    return [
      {
        kind: 'together',
        blocks: [
          heading(3, say.say(`findings.${id}.name`, look.params)),
          paragraph(what),
          paragraph(more.filter((one) => one !== '').join(' · '), 'small'),
        ],
      },
    ];
  });
}

function sessionPairs({ say, analysis, chart }: PageContext): Block[] {
  const { exercise } = analysis.measures;
  if (!exercise.ok || exercise.value.length === 0) return [];
  return [
    {
      kind: 'chart',
      title: say.say('pages.aroundNotes.pairs'),
      drawing: sessionPairsChart(analysis.timeline, exercise.value, chart),
    },
    ...tooFew({ say, analysis, chart }),
  ];
}

/** How many there were where they were too few to compare. */
function tooFew({ say, analysis }: PageContext): Block[] {
  const { comparisons } = analysis.measures;
  const night = comparisons.ok ? comparisons.value.find(({ id }) => id === 'extra-carbs-night') : undefined;
  if (night?.verdict !== 'too-few') return [];
  return [paragraph(say.say('pages.aroundNotes.fewSessions', { a: count(night.a.n), b: count(night.b.n) }))];
}

/** One session is told whole by the picture before. */
function sessions({ say, analysis, chart }: PageContext): Block[] {
  const { exercise } = analysis.measures;
  if (!exercise.ok || exercise.value.length < 2) return [];
  return [
    {
      kind: 'together',
      blocks: [
        heading(2, say.say('pages.aroundNotes.sessions')),
        paragraph(
          say.say('pages.aroundNotes.sessionsHow', {
            limit: { q: 'limit', of: 'low' },
            hidden: count(Math.max(0, exercise.value.length - MOST_SESSIONS)),
          }),
          'small',
        ),
        { kind: 'chart', drawing: sessionsChart(analysis.timeline, exercise.value, chart) },
      ],
    },
  ];
}

function coach(context: PageContext): Block[] {
  const { say, analysis } = context;
  const topic = analysis.topics.find((one) => held(context, one.id));
  const wishes = notesWorthWriting(analysis.measures, analysis.topics);
  if (!topic || wishes.length === 0) return [];
  const name = say.say(`findings.${topic.id}.topic`, held(context, topic.id)!.params);
  return [
    {
      kind: 'together',
      blocks: [
        heading(2, say.say('pages.aroundNotes.coach', { topic: word(name) })),
        { kind: 'list', ordered: false, items: wishes.map((wish) => say.say(`coach.${wish}.clinic`)) },
      ],
    },
  ];
}

const usable = (meals: readonly Meal[]): Meal[] => meals.filter(({ unusable }) => unusable.length === 0);

function laidOver({ say, analysis, chart }: PageContext, meals: readonly Meal[]): Block[] {
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
  if (laid.length === 0) return [];
  return [
    {
      kind: 'together',
      blocks: [
        heading(2, say.say('pages.aroundNotes.overlay')),
        paragraph(say.say('pages.aroundNotes.overlayHow'), 'small'),
        { kind: 'chart', drawing: mealOverlayChart(analysis.timeline, laid, chart) },
      ],
    },
  ];
}

/** The usual day once more, low, with the notes on its own clock. */
function overTheClock({ say, analysis, chart }: PageContext): Block[] {
  const { modalDay, noteLog } = analysis.measures;
  if (!modalDay.ok || !noteLog.ok) return [];
  return [
    {
      kind: 'together',
      blocks: [
        heading(2, say.say('pages.aroundNotes.clock')),
        { kind: 'chart', drawing: modalDayChart(modalDay.value, chart, { height: 84, outer: true }) },
        space(2),
        { kind: 'chart', drawing: noteDensityChart(noteLog.value, chart, { right: CURVE_LABELS }) },
      ],
    },
  ];
}

/** Foods noted often enough to compare, by their usual time above range. */
function foods({ say, analysis, chart }: PageContext, meals: readonly Meal[]): Block[] {
  const { comparisons } = analysis.measures;
  if (!comparisons.ok) return [];
  const listed = comparisons.value
    .filter(({ id, verdict }) => id === 'food' && verdict !== 'too-few')
    .map((comparison): FoodMeals => {
      const at = usable(meals).filter(
        ({ slot, foods }) => slot === comparison.slot && foods.includes(comparison.a.name),
      );
      return { comparison, meals: at };
    })
    .sort((a, b) => (b.comparison.a.median ?? 0) - (a.comparison.a.median ?? 0));
  if (listed.length === 0) return [];
  return [
    {
      kind: 'together',
      blocks: [
        heading(2, say.say('pages.aroundNotes.foods')),
        paragraph(
          say.say('pages.aroundNotes.foodsHow', {
            limit: { q: 'limit', of: 'high' },
            hidden: count(Math.max(0, listed.length - MOST_FOODS)),
          }),
          'small',
        ),
        { kind: 'chart', drawing: foodsChart(analysis.timeline, listed, chart) },
      ],
    },
  ];
}
