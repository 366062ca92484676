import { isolated } from '../../language/index.ts';
import type { LocalDate } from '../../model/glucose.ts';
import type { LowStory, NotedNear } from '../../model/lowStories.ts';
import type { Episode } from '../../model/measures.ts';
import type { Block } from '../../model/report.ts';
import { NIGHT_END } from '../../targets/consensus.ts';
import { caution, count, dotted, heading, type PageContext, paragraph, tellAll, word } from '../context.ts';
import { weekdayAnd } from './sides.ts';

/** So many lows are told as they went; more are dates. */
const MOST_STORIES = 5;
/** So many dates are listed; more are a count. */
const MOST_DATES = 28;
/** A longer remark stands whole in the report for the team, and is not cut here. */
const SHORT_REMARK = 70;
/** A low of half a day has no hours worth telling: its dates and its length are. */
const STILL = 720;

/** The gravest lows as small stories, in order of time, and the others by their dates. */
export function lows(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const { lowStories, lows } = analysis.measures;
  const list = lows.ok ? lows.value.list : [];
  if (!lowStories.ok || list.length === 0) return brief(context);
  const { stories, gravestFirst } = lowStories.value;
  const days = new Set(list.map(({ date }) => date)).size;
  const title = heading(2, speaker.say('pages.patientLows.title', { count: count(list.length), days: count(days) }));
  const form = (most: number, dense: boolean, dates: boolean) => (): Block[] => {
    const shown = new Set(gravestFirst.slice(0, most));
    const shownStories = stories.filter((_, place) => shown.has(place));
    const others = stories.filter((_, place) => !shown.has(place));
    const items = shownStories.map((story) => storyText(story, list[story.gravest]!, context));
    const pressed = shownStories.some((story) => story.pressed);
    return [
      title,
      { kind: 'list', ordered: false, items, ...(dense ? { dense } : {}) },
      ...(others.length > 0 ? [paragraph(rest(others, list, dates, context), 'small')] : []),
      ...(pressed ? [caution(context, 'C8')] : []),
    ];
  };
  const most = Math.min(MOST_STORIES, stories.length);
  const counts = Array.from({ length: most }, (_, i) => most - i);
  const forms = [
    ...counts.filter((n) => n >= Math.min(3, most)).map((n) => form(n, false, true)),
    ...counts.filter((n) => n >= Math.min(3, most)).map((n) => form(n, true, true)),
    ...counts.filter((n) => n < 3).flatMap((n) => [form(n, true, true), form(n, true, false)]),
  ];
  return [{ kind: 'fit', gives: 9, forms }];
}

/** Lows too short for an event. */
function brief(context: PageContext): Block[] {
  const lines = tellAll(context, ['brief-lows']);
  return lines.length === 0
    ? []
    : [heading(2, context.speaker.say('pages.patientLows.few')), paragraph(lines.join(' '))];
}

function rest(
  others: readonly LowStory[],
  list: readonly Episode[],
  listed: boolean,
  { speaker }: PageContext,
): string {
  const lows = others.flatMap((story) => story.lows.map((place) => list[place]!));
  const dates = [...new Set(lows.map(({ date }) => date))];
  const long = (value: LocalDate): string => speaker.value({ q: 'date', value }).replaceAll(' ', '\u00a0');
  if (listed && dates.length <= MOST_DATES)
    return speaker.say('pages.patientLows.more', {
      count: count(lows.length),
      dates: word(dotted(dates.map((one) => weekdayAnd(one, speaker)))),
    });
  return speaker.say('pages.patientLows.moreMany', {
    count: count(lows.length),
    days: count(dates.length),
    from: word(long(dates[0]!)),
    to: word(long(dates.at(-1)!)),
  });
}

function storyText(story: LowStory, low: Episode, context: PageContext): string {
  const { speaker } = context;
  const noted = before(story, low, context);
  const depth = {
    level: word(low.level === 2 ? 'two' : 'one'),
    lowest: { q: 'glucose' as const, value: low.extreme, limit: low.extremeLimit },
    at: word(low.extremeLimit === 0 ? 'value' : 'beyond'),
  };
  const first =
    low.minutes >= STILL
      ? speaker.say('pages.patientLows.still', {
          span: word(low.days.length > 1 ? 'days' : 'day'),
          from: word(weekdayAnd(low.date, speaker)),
          to: word(weekdayAnd(low.days.at(-1)!.date, speaker)),
          length: { q: 'minutes', value: low.minutes },
          ...depth,
        })
      : speaker.say('pages.patientLows.story', {
          when: word(
            speaker.say('pages.patientLows.when', {
              date: { q: 'date', value: low.date },
              night: word(low.startMinute < NIGHT_END ? 'yes' : 'no'),
            }),
          ),
          noted: word(noted.length > 0 ? noted.join(', ') : 'none'),
          from: { q: 'clock', value: low.startMinute },
          to: { q: 'clock', value: low.endMinute },
          ...depth,
        });
  const after = [...ended(story, context), ...wrote(story, context)];
  const nothing = noted.length === 0 && after.length === 0 && story.remark === null;
  return [
    first,
    ...(low.cut.start || low.cut.end ? [speaker.say('pages.patientLows.longer')] : []),
    ...after,
    ...(nothing ? [speaker.say('pages.patientLows.noNote')] : []),
    ...again(story, low, context),
    ...(story.pressed ? [speaker.say('pages.patientLows.maybe')] : []),
  ].join(' ');
}

/** How many more there were that evening and night, and how deep where one went deeper than what is told. */
function again(story: LowStory, told: Episode, { speaker, analysis }: PageContext): string[] {
  const { lows } = analysis.measures;
  const others = lows.ok
    ? story.lows.filter((place) => place !== story.gravest).map((place) => lows.value.list[place]!)
    : [];
  if (others.length === 0) return [];
  const deepest = others.reduce((least, one) => (one.extreme < least.extreme ? one : least));
  return [
    speaker.say('pages.patientLows.again', {
      count: count(others.length),
      deeper: word(deepest.extreme < told.extreme ? 'yes' : 'no'),
      lowest: { q: 'glucose', value: deepest.extreme, limit: deepest.extremeLimit },
    }),
  ];
}

/** Exercise and insulin without food in order of time; the last food where there was neither. */
function before({ exercise, insulinOnly, food }: LowStory, low: Episode, { speaker }: PageContext): string[] {
  const at = ({ date, minute }: NotedNear) => ({
    at: { q: 'clock' as const, value: minute },
    day: word(date === low.date ? 'same' : 'before'),
  });
  const named = ({ name }: NotedNear) => word(name === '' ? 'none' : isolated(name));
  const parts: { minute: NotedNear; text: string }[] = [];
  if (exercise)
    parts.push({
      minute: exercise,
      text: speaker.say('pages.patientLows.exercise', { ...at(exercise), name: named(exercise) }),
    });
  if (insulinOnly)
    parts.push({ minute: insulinOnly, text: speaker.say('pages.patientLows.insulinOnly', at(insulinOnly)) });
  else if (food && !exercise)
    parts.push({ minute: food, text: speaker.say('pages.patientLows.food', { ...at(food), name: named(food) }) });
  const order = ({ date, minute }: NotedNear): string => `${date} ${String(minute).padStart(4, '0')}`;
  return parts.sort((a, b) => (order(a.minute) < order(b.minute) ? -1 : 1)).map(({ text }) => text);
}

function ended({ alarm, eaten }: LowStory, { speaker }: PageContext): string[] {
  const how = alarm && eaten ? 'both' : alarm ? 'alarm' : 'food';
  const first = alarm ?? eaten;
  if (first === null) return [];
  return [
    speaker.say('pages.patientLows.ended', {
      how: word(how),
      alarm: { q: 'clock', value: first.minute },
      food: { q: 'clock', value: (eaten ?? first).minute },
    }),
  ];
}

function wrote({ remark }: LowStory, { speaker }: PageContext): string[] {
  if (remark === null || remark.name.length > SHORT_REMARK) return [];
  return [speaker.say('pages.patientLows.wrote', { text: word(isolated(remark.name)) })];
}
