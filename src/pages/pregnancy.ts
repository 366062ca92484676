import type { BesideGoal, PregnancyWeek } from '../model/readingOrders.ts';
import type { Block, Cell } from '../model/report.ts';
import { columnsOf, count, denseTable, heading, type PageContext, paragraph, word } from './context.ts';

/** A pregnancy week by week, and its fasting values and those after meals beside published goals. */
export function pregnancyBlocks(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const { pregnancy } = analysis.measures;
  if (!pregnancy.ok) return [];
  const title = (column: 'week' | 'days' | 'inRange' | 'low' | 'mean') =>
    speaker.say(`pages.pregnancy.columns.${column}`);
  const { weeks, ...values } = pregnancy.value;
  return [
    heading(2, speaker.say('pages.pregnancy.title')),
    denseTable(
      speaker.say('pages.pregnancy.title'),
      columnsOf(title, ['week', 0.4], ['days', 0.12], ['inRange', 0.16], ['low', 0.16], ['mean', 0.16]),
      weeks.map((week) => cells(context, week)),
    ),
    paragraph(
      [
        ...(['fasting', 'oneHour', 'twoHours'] as const).flatMap((of) => againstGoal(context, of, values[of]) ?? []),
        // What is printed beside values that are there: a goal without a value is not told.
        speaker.say('pages.pregnancy.goals', { whose: word(whose(Object.values(values).filter(({ n }) => n > 0))) }),
      ].join(' '),
    ),
  ];
}

function cells({ speaker }: PageContext, { from, days, inRange, low, mean, week }: PregnancyWeek): Cell[] {
  const when = { from: { q: 'date' as const, value: from }, week: count(week ?? 0) };
  const share = (value: number | null): Cell => ({
    text: value === null ? '–' : speaker.value({ q: 'share', value }),
  });
  return [
    { text: speaker.say(`pages.pregnancy.${week === null ? 'from' : 'weekFrom'}`, when) },
    { text: speaker.number(days, 0) },
    share(inRange),
    share(low),
    { text: mean === null ? '–' : speaker.value({ q: 'glucose', value: mean }) },
  ];
}

function whose(values: readonly BesideGoal[]): 'published' | 'clinic' | 'both' {
  const clinics = values.filter(({ of }) => of === 'clinic').length;
  return clinics === 0 ? 'published' : clinics === values.length ? 'clinic' : 'both';
}

function againstGoal(
  { speaker }: PageContext,
  of: 'fasting' | 'oneHour' | 'twoHours',
  value: BesideGoal,
): string | null {
  if (value.median === null) return null;
  return speaker.say(`pages.pregnancy.${of}`, {
    n: count(value.n),
    median: { q: 'glucose', value: value.median },
    below: count(value.below),
    goal: { q: 'glucose', value: value.goal },
    whose: word(value.of),
  });
}
