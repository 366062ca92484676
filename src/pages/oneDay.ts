import { noteInWords } from '../charts/dayInWords.ts';
import { dayStripChart } from '../charts/dayStrip.ts';
import { drawnNotes } from '../charts/drawnNotes.ts';
import { CONTENT_WIDTH, NARROW_WIDTH } from '../charts/frame.ts';
import { isolated } from '../language/index.ts';
import type { Drawing } from '../model/drawing.ts';
import type { LocalDate } from '../model/glucose.ts';
import type { DailySummary } from '../model/measures.ts';
import type { Block, Page } from '../model/report.ts';
import { BANDS } from '../targets/bands.ts';
import { columnsOf, denseTable, heading, lowsOf, type PageContext, paragraph } from './context.ts';

/** Of the plot, in points: as tall as a screen has room for beside its notes. */
const HEIGHT = 190;
const NARROW_HEIGHT = 150;
const LANES = 3;
/** Least minutes of the clock between points that are read off. */
const STEP = 5;

/** One day by itself, large, for a screen: its curve, its time in each band, its lows, and all that was noted. Null: no day of the period. */
export function oneDay(context: PageContext, date: LocalDate): Page | null {
  const { speaker, analysis, chart } = context;
  const { daily } = analysis.measures;
  const { timeline } = analysis;
  const index = timeline.days.findIndex((day) => day.date === date);
  if (index < 0 || !daily.ok) return null;
  const summary = daily.value[index]!;
  const draw = (width: number, height: number) =>
    dayStripChart(
      timeline,
      summary,
      index,
      { ...chart, width },
      {
        ...{ height, lanes: LANES, clock: true, alone: true, lows: lowsOf(analysis.measures) },
        step: Math.max(STEP, Math.round(timeline.interval)),
      },
    );
  const drawing: Drawing = { ...draw(CONTENT_WIDTH, HEIGHT), narrow: draw(NARROW_WIDTH, NARROW_HEIGHT) };
  const title = speaker.value({ q: 'date', value: date }, 'full');
  return {
    id: 'one-day',
    title,
    blocks: [
      paragraph(drawing.summary, 'lead'),
      { kind: 'chart', title: speaker.say('pages.oneDay.curve'), drawing },
      ...time(context, summary),
      ...lows(context, date),
      ...notes(context, index),
    ],
  };
}

/** Time in each band, of the readings that there are. */
function time({ speaker, analysis }: PageContext, { minutes, inRange, share }: DailySummary): Block[] {
  const all = BANDS.reduce((sum, band) => sum + minutes[band], 0);
  if (inRange === null || all === 0) return [];
  const { limits } = analysis.targets;
  const known = BANDS.filter((band) => band !== 'very-high' || limits[analysis.timeline.unit].veryHigh !== null);
  return [
    heading(2, speaker.say('pages.oneDay.time')),
    paragraph(speaker.say('pages.oneDay.seen', { share: { q: 'share', value: Math.min(1, share) } }), 'small'),
    denseTable(
      speaker.say('pages.oneDay.time'),
      columnsOf(
        (name: 'band' | 'length' | 'share') => speaker.say(`pages.oneDay.${name}`),
        ['band', 0.5],
        ['length', 0.25],
        ['share', 0.25],
      ),
      known
        .toReversed()
        .map((band) => [
          { text: speaker.say(`bands.${band}.name`), band },
          { text: speaker.value({ q: 'minutes', value: minutes[band] }, 'short') },
          { text: speaker.value({ q: 'share', value: minutes[band] / all }), strong: true },
        ]),
    ),
  ];
}

function lows({ speaker, analysis }: PageContext, date: LocalDate): Block[] {
  if (!analysis.measures.lows.ok) return [];
  const all = lowsOf(analysis.measures).filter((low) => low.date === date);
  if (all.length === 0) return [];
  const items = all.map((low) =>
    speaker.say('charts.dayStrip.low', {
      time: { q: 'clock', value: low.startMinute },
      length: { q: 'minutes', value: low.minutes },
      lowest: { q: 'glucose', value: low.extreme, limit: low.extremeLimit },
    }),
  );
  return [heading(2, speaker.say('pages.oneDay.lows')), { kind: 'list', ordered: false, items }];
}

/** What was noted, with times and amounts; those of a day without a time first. */
function notes({ speaker, analysis, chart }: PageContext, index: number): Block[] {
  const noted = drawnNotes(analysis.timeline).filter((note) => note.day === index);
  const items = [...noted.filter(({ timed }) => !timed), ...noted.filter(({ timed }) => timed)];
  return [
    heading(2, speaker.say('pages.oneDay.notes')),
    items.length === 0
      ? paragraph(speaker.say('pages.oneDay.noNotes'))
      : { kind: 'list', ordered: false, items: items.map((note) => isolated(noteInWords(note, chart))) },
  ];
}
