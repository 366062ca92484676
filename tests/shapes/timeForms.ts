import type { Words } from './words.ts';

/** A time as a row writes it: local wall clock in ms as if UTC, minutes from world time. */
export interface When {
  wall: number;
  offset: number;
}

/** What one column of a time form holds, as a layout would call it. */
export interface TimeColumn {
  name: string;
  role: 'time' | 'date' | 'clock' | 'offset' | 'half';
}

export interface TimeForm {
  columns(words: Words, when: When): TimeColumn[];
  cells(when: When, words: Words): string[];
  /** Order of day and month in digits, when nothing but the numbers tells it. */
  order?: 'day-first' | 'month-first' | 'year-first';
  shortYear?: true;
  seconds?: true;
  /** The offset stands in the file. */
  offset?: true;
  /** World time only: the hour on the wall is not in the file. */
  world?: true;
  /** Numbers that a spreadsheet shows as times. */
  serial?: true;
}

const two = (n: number): string => String(n).padStart(2, '0');
interface Parts {
  y: number;
  m: number;
  d: number;
  h: number;
  i: number;
  s: number;
}
function parts(ms: number): Parts {
  const at = new Date(ms);
  return {
    y: at.getUTCFullYear(),
    m: at.getUTCMonth() + 1,
    d: at.getUTCDate(),
    h: at.getUTCHours(),
    i: at.getUTCMinutes(),
    s: at.getUTCSeconds(),
  };
}
const hm = ({ h, i }: Parts) => `${two(h)}:${two(i)}`;
const hms = (p: Parts) => `${hm(p)}:${two(p.s)}`;
const iso = ({ y, m, d }: Parts) => `${y}-${two(m)}-${two(d)}`;
const dmy = ({ y, m, d }: Parts, mark = '.') => [two(d), two(m), y].join(mark);
const mdy = ({ y, m, d }: Parts, mark = '/') => [two(m), two(d), y].join(mark);
const bare = ({ y, m, d }: Parts) => `${y}${two(m)}${two(d)}`;
const half = ({ h }: Parts, am: string, pm: string) => (h < 12 ? am : pm);
const twelve = (p: Parts, pad = false) => `${pad ? two(p.h % 12 || 12) : p.h % 12 || 12}:${two(p.i)}`;
const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');
const DAYS = 'Sun Mon Tue Wed Thu Fri Sat'.split(' ');
const offsetText = (minutes: number, colon = true) =>
  `${minutes < 0 ? '-' : '+'}${two(Math.floor(Math.abs(minutes) / 60))}${colon ? ':' : ''}${two(Math.abs(minutes) % 60)}`;
const ZONES: Record<number, string> = {
  120: 'Europe/Helsinki',
  180: 'Europe/Helsinki',
  [-240]: 'America/New_York',
  [-300]: 'America/New_York',
  330: 'Asia/Kolkata',
};
export const zoneOf = (offset: number): string => ZONES[offset]!;
const DAY = 86_400_000;
const serialOf = (ms: number) => ms / DAY + 25_569;
const dayOfYear = (p: Parts) => Math.round((Date.UTC(p.y, p.m - 1, p.d) - Date.UTC(p.y, 0, 0)) / DAY);
/** ISO 8601: the week holding the year's first Thursday is the first. */
function weekDate(ms: number): string {
  const weekday = new Date(ms).getUTCDay() || 7;
  const thursday = new Date(ms + (4 - weekday) * DAY);
  const first = Date.UTC(thursday.getUTCFullYear(), 0, 1);
  const week = Math.floor((thursday.getTime() - first) / DAY / 7) + 1;
  return `${thursday.getUTCFullYear()}-W${two(week)}-${weekday}`;
}

const inTime = (w: Words): TimeColumn[] => [{ name: w.names.time!, role: 'time' }];
const inTwo = (w: Words): TimeColumn[] => [
  { name: w.names.date!, role: 'date' },
  { name: w.names.clock!, role: 'clock' },
];
const inThree = (w: Words): TimeColumn[] => [...inTwo(w), { name: `${w.names.am}/${w.names.pm}`, role: 'half' }];

type More = Omit<TimeForm, 'columns' | 'cells'>;
const one = (cell: (p: Parts, when: When, w: Words) => string, more: More = {}): TimeForm => ({
  columns: inTime,
  cells: (when, w) => [cell(parts(when.wall), when, w)],
  ...more,
});
const pair = (cells: (p: Parts, when: When, w: Words) => string[], more: More = {}): TimeForm => ({
  columns: inTwo,
  cells: (when, w) => cells(parts(when.wall), when, w),
  ...more,
});
const DMY = { order: 'day-first' } as const;
const MDY = { order: 'month-first' } as const;
const instant = ({ wall, offset }: When) => wall - offset * 60_000;

export const TIME_FORMS: Record<string, TimeForm> = {
  iso: one((p) => `${iso(p)} ${hm(p)}`),
  'iso-seconds': one((p) => `${iso(p)} ${hms(p)}`, { seconds: true }),
  'iso-T': one((p) => `${iso(p)}T${hms(p)}`, { seconds: true }),
  'iso-offset': one((p, { offset }) => `${iso(p)}T${hms(p)}${offsetText(offset)}`, { seconds: true, offset: true }),
  'iso-short-offset': one((p, { offset }) => `${iso(p)} ${hm(p)} ${offsetText(offset, false)}`, { offset: true }),
  'iso-zone': one((p, { offset }) => `${iso(p)}T${hms(p)}${offsetText(offset)}[${zoneOf(offset)}]`, {
    seconds: true,
    offset: true,
  }),
  'iso-Z': one((_, when) => `${new Date(instant(when)).toISOString().slice(0, 19)}Z`, { seconds: true, world: true }),
  'iso-fraction': one((p) => `${iso(p)} ${hms(p)}.000000`, { seconds: true }),
  'iso-basic': one((p) => `${bare(p)}T${two(p.h)}${two(p.i)}${two(p.s)}`, { seconds: true }),
  'digits-12': one((p) => `${bare(p)}${two(p.h)}${two(p.i)}`),
  ordinal: one((p) => `${p.y}-${String(dayOfYear(p)).padStart(3, '0')}T${hm(p)}`),
  'week-date': one((p, { wall }) => `${weekDate(wall)}T${hm(p)}`),
  'year-slash': one((p) => `${p.y}/${two(p.m)}/${two(p.d)} ${hm(p)}`),
  'year-day-slash': one((p) => `${p.y}/${two(p.d)}/${two(p.m)} ${hm(p)}`),
  'two-year-day': pair((p) => [`${p.y}-${two(p.d)}-${two(p.m)}`, hms(p)], { seconds: true }),
  'year-dot-loose': one((p) => `${p.y}. ${p.m}. ${p.d}. ${hm(p)}`),
  'year-signs': one((p) => `${p.y}年${p.m}月${p.d}日 ${hm(p)}`),
  'dmy-dot': one((p) => `${dmy(p)} ${hm(p)}`, DMY),
  'dmy-slash': one((p) => `${dmy(p, '/')} ${hms(p)}`, { ...DMY, seconds: true }),
  'dmy-dash': one((p) => `${dmy(p, '-')} ${hm(p)}`, DMY),
  'dmy-loose': one((p) => `${p.d}. ${p.m}. ${p.y} ${p.h}:${two(p.i)}`, DMY),
  'dmy-short-year': one((p) => `${two(p.d)}.${two(p.m)}.${two(p.y % 100)} ${hm(p)}`, { ...DMY, shortYear: true }),
  'dmy-h': one((p) => `${dmy(p, '/')} ${p.h}h${two(p.i)}`, DMY),
  'dmy-dot-clock': one((p) => `${dmy(p)} ${two(p.h)}.${two(p.i)}`, DMY),
  'mdy-slash': one((p) => `${mdy(p)} ${hm(p)}`, MDY),
  'mdy-half': one((p) => `${mdy(p)} ${twelve(p)} ${half(p, 'AM', 'PM')}`, MDY),
  'mdy-short-year-half': one((p) => `${p.m}/${p.d}/${two(p.y % 100)} ${twelve(p)} ${half(p, 'a.m.', 'p.m.')}`, {
    ...MDY,
    shortYear: true,
  }),
  'dmy-half-own': one((p, _, w) => `${dmy(p, '/')} ${twelve(p)} ${half(p, w.names.am!, w.names.pm!)}`, DMY),
  'named-month': one((p) => `${p.d} ${MONTHS[p.m - 1]} ${p.y} ${hm(p)}`),
  'named-month-first': one((p) => `${MONTHS[p.m - 1]} ${p.d}, ${p.y} ${twelve(p)} ${half(p, 'AM', 'PM')}`),
  'named-month-short': one((p) => `${two(p.d)}-${MONTHS[p.m - 1]}-${two(p.y % 100)} ${hm(p)}`),
  'named-month-own': one((p, _, w) => `${p.d} ${w.months[p.m - 1]} ${p.y} ${hm(p)}`),
  'year-named-own': one((p, _, w) => `${p.y}. ${w.months[p.m - 1]} ${p.d}. ${hm(p)}`),
  'half-before': one((p, _, w) => `${iso(p)} ${half(p, w.names.am!, w.names.pm!)} ${twelve(p)}`),
  'two-half-before': pair((p, _, w) => [dmy(p, '/'), `${half(p, w.names.am!, w.names.pm!)}${twelve(p)}`], DMY),
  weekday: one(
    (p, { wall }) => `${DAYS[new Date(wall).getUTCDay()]}, ${two(p.d)} ${MONTHS[p.m - 1]} ${p.y} ${hms(p)}`,
    {
      seconds: true,
    },
  ),
  seconds: one((_, when) => String(instant(when) / 1000), { seconds: true, world: true }),
  millis: one((_, when) => String(instant(when)), { seconds: true, world: true }),
  serial: one((_, { wall }) => serialOf(wall).toFixed(10), { serial: true }),
  'two-iso': pair((p) => [iso(p), hms(p)], { seconds: true }),
  'two-dmy': pair((p) => [dmy(p), hm(p)], DMY),
  'two-mdy-half': pair((p) => [mdy(p), `${twelve(p, true)} ${half(p, 'AM', 'PM')}`], MDY),
  'two-fraction': pair((p, { wall }) => [dmy(p), String((wall % DAY) / DAY)], DMY),
  'two-bare': pair((p) => [iso(p), `${two(p.h)}${two(p.i)}`]),
  'two-carried': pair((p) => [p.h === 0 && p.i < 20 ? iso(p) : '', hm(p)]),
  'two-serial': pair((_, { wall }) => [String(Math.floor(serialOf(wall))), String((wall % DAY) / DAY)], {
    serial: true,
  }),
  'three-half': {
    columns: inThree,
    cells: ({ wall }) => [iso(parts(wall)), twelve(parts(wall)), half(parts(wall), 'AM', 'PM')],
  },
  'three-half-own': {
    columns: inThree,
    cells: ({ wall }, w) => [dmy(parts(wall)), twelve(parts(wall), true), half(parts(wall), w.names.am!, w.names.pm!)],
    ...DMY,
  },
  'offset-column': {
    columns: (w) => [...inTime(w), { name: 'UTC offset', role: 'offset' }],
    cells: ({ wall, offset }) => [`${iso(parts(wall))} ${hm(parts(wall))}`, offsetText(offset)],
    offset: true,
  },
  'offset-in-header': {
    columns: (w, { offset }) => [{ name: `${w.names.time} (UTC${offsetText(offset)})`, role: 'time' }],
    cells: ({ wall }) => [`${iso(parts(wall))} ${hm(parts(wall))}`],
  },
};
