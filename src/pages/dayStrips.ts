import { AXIS_HIGH, AXIS_LOW } from '../charts/axis.ts';
import { byMonth, calendarChart, MONTHS_A_ROW } from '../charts/calendar.ts';
import { dayRowsChart } from '../charts/dayRows.ts';
import { dayStripChart } from '../charts/dayStrip.ts';
import { drawnNotes } from '../charts/drawnNotes.ts';
import type { MgPerDl } from '../model/glucose.ts';
import type { NoteKind } from '../model/input.ts';
import type { DailySummary } from '../model/measures.ts';
import type { Block } from '../model/report.ts';
import { count, heading, lowsOf, type PageContext, type PageMaker, paragraph, word } from './context.ts';

/**
 * How strips share a sheet: seven tall ones, or eleven lower ones, nine under the title; then a row a day without a
 * curve, and past a quarter of a year a calendar with a box a day.
 */
const TALL = { days: 21, first: 7, perSheet: 7, height: 42, lanes: 2 };
const LOW = { days: 35, first: 9, perSheet: 11, height: 24, lanes: 2 };
const ROWS = { days: 92, perSheet: 46 };

/** One strip a day, all on the same axes, with the notes of that day under its curve. Long periods get a row a day. */
export const dayStrips: PageMaker = (context) => {
  const { speaker, analysis } = context;
  const { daily } = analysis.measures;
  if (!daily.ok) return null;
  const days = daily.value;
  const blocks: Block[] = [heading(1, speaker.say('pages.dayStrips.title'))];
  const layout = [TALL, LOW].find((one) => days.length <= one.days);
  if (layout) blocks.push(paragraph(explain(context)), ...strips(days, layout, context));
  else if (days.length <= ROWS.days) {
    blocks.push(paragraph(speaker.say('pages.dayStrips.rows', { days: count(days.length) })), ...rows(days, context));
  } else {
    blocks.push(
      paragraph(speaker.say('pages.dayStrips.calendar', { days: count(days.length) })),
      ...calendar(days, context),
    );
  }
  return { id: 'day-strips', title: speaker.say('pages.dayStrips.title'), blocks };
};

/** What the strips show; only signs that occur are explained. */
function explain({ speaker, analysis }: PageContext): string {
  const kinds = [
    ...new Set(
      drawnNotes(analysis.timeline)
        .filter((note) => note.timed)
        .map((note) => note.kind),
    ),
  ].sort();
  const key = kinds.map((kind: NoteKind) =>
    speaker.say('pages.dayStrips.sign', {
      letter: word(speaker.say(`notes.${kind}.letter`)),
      name: word(speaker.say(`notes.${kind}.name`)),
    }),
  );
  const { mean } = analysis.measures;
  const end = (mgdl: number) => word(speaker.value({ q: 'glucose', value: mgdl as MgPerDl }, 'short'));
  return speaker.say('pages.dayStrips.how', {
    from: end(AXIS_LOW),
    to: end(AXIS_HIGH),
    unit: word(speaker.unit),
    // No mean at all is what is left where every reading lies beyond the limits.
    beyond: word(!mean.ok || mean.value.bounded ? 'yes' : 'no'),
    notes: count(kinds.length),
    key: word(key.join(', ')),
  });
}

/** One day, or days one after another without a reading or a note: those are a line, not empty pictures. */
type Item = { days: DailySummary[]; index: number; empty: boolean };

/** Room of a line beside that of a strip. */
const LINE = 0.3;

function strips(days: DailySummary[], layout: typeof TALL, context: PageContext): Block[] {
  const { height, lanes } = layout;
  const { analysis, chart } = context;
  return sheets(items(days, context), layout).flatMap((sheet, at): Block[] => {
    const last = sheet.findLast(({ empty }) => !empty);
    const blocks = sheet.map((item): Block => {
      if (item.empty) return paragraph(unseen(item.days, context), 'small');
      const options = { height, lanes, clock: item === last, lows: lowsOf(analysis.measures) };
      return { kind: 'chart', drawing: dayStripChart(analysis.timeline, item.days[0]!, item.index, chart, options) };
    });
    return at === 0 ? blocks : [{ kind: 'pageBreak' }, ...blocks];
  });
}

function items(days: DailySummary[], { analysis }: PageContext): Item[] {
  const { timeline } = analysis;
  const noted = new Set(timeline.notes.map(({ day }) => day));
  const found: Item[] = [];
  days.forEach((summary, index) => {
    const { from, to } = timeline.days[index]!;
    const empty = from === to && !noted.has(index);
    const before = found.at(-1);
    if (empty && before?.empty) before.days.push(summary);
    else found.push({ days: [summary], index, empty });
  });
  return found;
}

function sheets(all: Item[], { first, perSheet }: typeof TALL): Item[][] {
  const found: Item[][] = [[]];
  let left = first;
  for (const item of all) {
    const room = item.empty ? LINE : 1;
    if (left < room - LINE) {
      found.push([]);
      left = perSheet;
    }
    left -= room;
    found.at(-1)!.push(item);
  }
  return found;
}

function unseen(days: DailySummary[], { speaker }: PageContext): string {
  const date = (summary: DailySummary) => ({ q: 'date' as const, value: summary.date });
  const [first, last] = [days[0]!, days.at(-1)!];
  if (first === last) return speaker.say('charts.dayStrip.empty', { date: date(first) });
  return speaker.say('pages.dayStrips.unseen', { from: date(first), to: date(last), days: count(days.length) });
}

/** As many rows on every sheet, so that none is left with a few. */
function rows(days: DailySummary[], { analysis, chart }: PageContext): Block[] {
  const perSheet = Math.ceil(days.length / Math.ceil(days.length / ROWS.perSheet));
  const blocks: Block[] = [];
  for (let first = 0; first < days.length; first += perSheet) {
    if (first > 0) blocks.push({ kind: 'pageBreak' });
    const some = days.slice(first, first + perSheet);
    blocks.push({ kind: 'chart', drawing: dayRowsChart(analysis.timeline, some, first, chart) });
  }
  return blocks;
}

function calendar(days: DailySummary[], { chart }: PageContext): Block[] {
  const months = byMonth(days);
  const blocks: Block[] = [];
  for (let first = 0; first < months.length; first += MONTHS_A_ROW) {
    blocks.push({ kind: 'chart', drawing: calendarChart(months.slice(first, first + MONTHS_A_ROW), chart) });
  }
  return blocks;
}
