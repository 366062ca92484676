import type { Drawing, Mark } from '../model/drawing.ts';
import type { Session } from '../model/occasions.ts';
import type { Note, Timeline } from '../model/timeline.ts';
import { NIGHT_END } from '../targets/consensus.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { beyondRange, pieces, rangeLines, type Span, spanAxis, spanScale } from './aligned.ts';
import { occasionAlong } from './along.ts';
import type { Plot } from './axis.ts';
import type { ChartContext } from './context.ts';
import { CONTENT_WIDTH } from './frame.ts';
import { noteSigns } from './noteSigns.ts';
import { round } from './pen.ts';
import { sessionsTable } from './sessionsTable.ts';

const LEFT = 132;
const RIGHT = 118;
const HEIGHT = 26;
const ROW = HEIGHT + 18;
/** From an hour before the start to twelve hours after it. */
export const SPAN: Span = { from: -60, to: 720 };
/** Minutes between points that are read off. */
export const STEP = 30;
/** So many fit a sheet; of more, the last ones are drawn. */
export const MOST_SESSIONS = 12;
export const GROUPS = ['extra', 'meal', 'none-noted'] as const;

/** Each session a strip from its start to twelve hours later, those with extra food first above those without. */
export function sessionsChart(timeline: Timeline, sessions: Session[], context: ChartContext): Drawing {
  const { speaker, text } = context;
  const shown = sessions.slice(-MOST_SESSIONS);
  const marks: Mark[] = [head(context)];
  const rows: { session: Session; plot: Plot }[] = [];
  let top = text + 6;
  for (const group of GROUPS) {
    const some = shown.filter(({ carbsFirst }) => carbsFirst === group);
    if (some.length === 0) continue;
    const title = speaker.say(`charts.sessions.${group}`);
    marks.push({
      kind: 'text',
      role: 'ink',
      x: 0,
      y: round(top + 9),
      text: title,
      size: 10,
      anchor: 'start',
      strong: true,
    });
    top += 15;
    for (const session of some) {
      const plot: Plot = { left: LEFT, top, width: CONTENT_WIDTH - LEFT - RIGHT, height: HEIGHT };
      rows.push({ session, plot });
      marks.push(...strip(timeline, session, plot, context), ...facts(session, plot, context));
      top += ROW;
    }
  }
  const foot: Plot = { left: LEFT, top: 0, width: CONTENT_WIDTH - LEFT - RIGHT, height: top - 3 };
  marks.push(...spanAxis(foot, SPAN, 120, context));
  const lowAfter = (group: Session['carbsFirst']) =>
    sessions.filter(({ carbsFirst, untilMorning }) => carbsFirst === group && untilMorning.low === true).length;
  const of = (group: Session['carbsFirst']) => sessions.filter(({ carbsFirst }) => carbsFirst === group).length;
  const count = (value: number) => ({ q: 'count' as const, value });
  return {
    width: CONTENT_WIDTH,
    height: round(top + text + 5),
    how: 'sessions',
    summary: speaker.say('charts.sessions.summary', {
      sessions: count(sessions.length),
      with: count(of('extra')),
      withLow: count(lowAfter('extra')),
      without: count(of('none-noted')),
      withoutLow: count(lowAfter('none-noted')),
      six: { q: 'clock', value: NIGHT_END },
    }),
    get table() {
      return sessionsTable(sessions, context);
    },
    get along() {
      return rows.flatMap(({ session, plot }) =>
        occasionAlong(timeline, session.at, SPAN, STEP, plot, dayOf(session, context), context),
      );
    },
    marks,
  };
}

/** Name of the column at the right. */
const head = ({ speaker, text }: ChartContext): Mark => ({
  kind: 'text',
  role: 'axis',
  x: CONTENT_WIDTH,
  y: text,
  text: speaker.say('charts.sessions.untilSix', { six: { q: 'clock', value: NIGHT_END } }),
  size: text,
  anchor: 'end',
});

function strip(timeline: Timeline, session: Session, plot: Plot, context: ChartContext): Mark[] {
  const x = spanScale(plot, SPAN);
  const foot = round(plot.top + plot.height);
  const end = round(x(session.minutes ?? 0));
  const start = round(x(0));
  return [
    ...night(session, plot),
    ...beyondRange(timeline, session.at, SPAN, plot, context),
    rangeLines(plot, context),
    { kind: 'line', role: 'grid', lines: [[start, plot.top, start, foot]], width: 0.5 },
    { kind: 'line', role: 'trace', lines: pieces(timeline, session.at, SPAN, plot), width: 1.1 },
    { kind: 'line', role: 'axis', lines: [[plot.left, foot, round(plot.left + plot.width), foot]], width: 0.5 },
    { kind: 'line', role: 'ink', lines: [[start, foot, Math.max(end, start + 2), foot]], width: 3 },
    ...food(timeline, session, plot, context),
  ];
}

/** Midnight to 06:00 as a line over the strip: where the night's lows are looked for. */
function night(session: Session, plot: Plot): Mark[] {
  const x = spanScale(plot, SPAN);
  const midnight = (session.minute < 240 ? 0 : 1440) - session.minute;
  const from = Math.max(SPAN.from, midnight);
  const to = Math.min(SPAN.to, midnight + 360);
  if (to <= from) return [];
  return [{ kind: 'line', role: 'night', lines: [[round(x(from)), plot.top, round(x(to)), plot.top]], width: 2 }];
}

/** Food and insulin noted from an hour before: what was eaten first, and at bedtime. */
function food(timeline: Timeline, session: Session, plot: Plot, context: ChartContext): Mark[] {
  const x = spanScale(plot, SPAN);
  const near: Note[] = timeline.notes
    .filter(({ kind, timed }) => timed && (kind === 'meal' || kind === 'insulin'))
    .map((note) => ({ ...note, minute: (note.at - session.at) / MINUTE_MS }))
    .filter(({ minute }) => minute >= SPAN.from && minute <= SPAN.to);
  const room = { left: plot.left, right: plot.left + plot.width, lanes: 1 };
  return noteSigns(near, x, plot.top + plot.height + 3, room, context);
}

const dayOf = ({ date }: Session, { speaker }: Pick<ChartContext, 'speaker'>): string =>
  `${speaker.value({ q: 'date', value: date }, 'weekday')} ${speaker.value({ q: 'date', value: date }, 'compact')}`;

function facts(session: Session, plot: Plot, { speaker, text }: ChartContext): Mark[] {
  const line = (row: number, x: number, content: string, anchor: 'start' | 'end', strong = false): Mark => ({
    kind: 'text',
    role: strong ? 'ink' : 'axis',
    x,
    y: round(plot.top + 8 + row * (text + 1.5)),
    text: content,
    size: text,
    anchor,
    strong,
  });
  const day = dayOf(session, { speaker });
  const clock = speaker.value({ q: 'clock', value: session.minute }, 'short');
  const lasted = session.minutes === null ? '' : speaker.value({ q: 'minutes', value: session.minutes }, 'short');
  const first =
    session.carbs === null || session.carbsFirst === 'none-noted'
      ? ''
      : speaker.say('charts.sessions.grams', { grams: { q: 'count', value: session.carbs } });
  const did = [session.kind ?? speaker.say('charts.sessions.unnamed'), lasted, first].filter((one) => one !== '');
  const marks = [line(0, 0, `${day}, ${clock}`, 'start', true), line(1, 0, did.join(', '), 'start')];
  const { low, lowest, lowMinutes } = session.untilMorning;
  if (low === null || lowest === null) return [...marks, line(0, CONTENT_WIDTH, '–', 'end')];
  marks.push(line(0, CONTENT_WIDTH, speaker.value({ q: 'glucose', value: lowest }, 'short'), 'end', low));
  if (low) {
    const minutes = speaker.value({ q: 'minutes', value: lowMinutes }, 'short');
    marks.push(
      line(1, CONTENT_WIDTH, speaker.say('charts.sessions.lowFor', { minutes: { q: 'word', value: minutes } }), 'end'),
    );
  }
  return marks;
}
