import { type Week, wholeWeeks } from '../../measures/weeks.ts';
import type { Block, Cell } from '../../model/report.ts';
import { columnsOf, count, denseTable, heading, type PageContext, word } from '../context.ts';
import { bounded } from '../numbersTable.ts';

/** One week is the period itself. */
const LEAST = 2;
/** So many weeks are tried, the last ones; a long period shows no more. */
const SHOWN = [8, 6, 4, 2];

/** A row a week, where there are two or more: in range, low, mean, and the hours it rests on. */
export function weekByWeek(context: PageContext): Block[] {
  const { daily, thenAndNow } = context.analysis.measures;
  const all = daily.ok ? wholeWeeks(daily.value) : [];
  if (all.length < LEAST) return [];
  const forms = SHOWN.filter((most, i) => most <= all.length || (SHOWN[i + 1] ?? 0) < all.length).map(
    (most) => () => table(context, all.slice(-most), all.length),
  );
  // Beside an earlier period weeks may give way.
  return [{ kind: 'fit', gives: 3, forms: thenAndNow.ok ? [...forms, () => []] : forms }];
}

function table(context: PageContext, weeks: Week[], all: number): Block[] {
  const { speaker } = context;
  const title = speaker.say('pages.visit.weeks.title', {
    shown: count(weeks.length),
    all: count(all),
    more: word(weeks.length < all ? 'yes' : 'no'),
  });
  const column = (name: 'first' | 'inRange' | 'low' | 'mean' | 'read'): string => {
    if (name === 'first' || name === 'read') return speaker.say(`pages.visit.weeks.${name}`);
    const words = speaker.say(`pages.pregnancy.columns.${name}`);
    return name === 'mean' ? `${words}, ${speaker.unit}` : words;
  };
  return [
    heading(2, title),
    denseTable(
      title,
      columnsOf(column, ['first', 0.32], ['inRange', 0.16], ['low', 0.16], ['mean', 0.2], ['read', 0.16]),
      weeks.map((week) => cells(context, week)),
    ),
  ];
}

function cells({ speaker, analysis }: PageContext, week: Week): Cell[] {
  const { pregnancy } = analysis.measures;
  const pregnant = pregnancy.ok ? pregnancy.value.weeks.find(({ from }) => from === week.from) : undefined;
  const share = (value: number | null): Cell => ({
    text: value === null ? '–' : speaker.value({ q: 'share', value }),
  });
  const { mean, bound } = week;
  const average = mean === null ? '–' : bounded(speaker, bound, speaker.value({ q: 'glucose', value: mean }, 'short'));
  return [
    {
      text: speaker.say('pages.visit.weeks.span', {
        from: word(speaker.value({ q: 'date', value: week.from }, 'compact')),
        week: count(pregnant?.week ?? -1),
      }),
    },
    share(week.inRange),
    share(week.low),
    { text: average },
    { text: speaker.number(week.minutes / 60, 0) },
  ];
}
