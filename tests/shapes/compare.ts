import type { Timeline } from '../../src/model/timeline.ts';
import type { SetAside } from '../../src/timeline/setAside.ts';
import { MGDL_PER_MMOL, UNITS } from '../../src/units.ts';
import { clockAt } from './clockChange.ts';
import { sheetName } from './render.ts';
import type { TrueNote } from './truth.ts';
import { words as allWords } from './words.ts';
import { placeKey, type Written } from './write.ts';

/** One thing that came back otherwise. `said`: the program told the line as not used. */
export interface Difference {
  what: string;
  said: boolean;
  detail: string;
}

const MINUTE = 60_000;
const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(b));
const clock = (ms: number): string => new Date(ms).toISOString().slice(0, 19).replace('T', ' ');

/** Everything that differs between what was written and what was read, gravest first. */
export function differences(written: Written, timeline: Timeline, setAside: SetAside[]): Difference[] {
  const aside = new Set(setAside.map(({ file, line }) => `${sheetName(file)}:${line}`));
  const all = [
    ...readingDifferences(written, timeline, aside),
    ...noteDifferences(written, timeline, aside),
    ...asideDifferences(written, timeline, aside),
  ];
  return all.sort((a, b) => gravity(a) - gravity(b));
}

/** What can hurt comes first; what was told comes last. */
const GRAVE = [
  'reading nobody wrote',
  'value otherwise',
  'unit otherwise',
  'insulin nobody wrote',
  'insulin amount otherwise',
  'insulin at another time',
  'limit otherwise',
  'reading lost',
  'insulin lost',
];
function gravity({ what, said }: Difference): number {
  const at = GRAVE.indexOf(what);
  return (said ? 100 : 0) + (at < 0 ? GRAVE.length : at);
}

/** Instants may lie where the wall clock would be UTC, or at the real one; all alike, and the real one where it was written. */
function shiftOf({ offset, offsetWritten, readings: written }: Written, { zone, readings }: Timeline): number {
  const real = offset * MINUTE;
  if (offsetWritten || zone !== null) return real;
  const first = written.reduce((least, { wall }) => Math.min(least, wall), Number.POSITIVE_INFINITY);
  return readings.count > 0 && readings.at[0] !== first && readings.at[0]! + real === first ? real : 0;
}

function readingDifferences(written: Written, timeline: Timeline, aside: Set<string>): Difference[] {
  const found: Difference[] = [];
  const { readings, days } = timeline;
  const units = new Set(written.readings.map(({ unit }) => unit));
  if (!units.has(timeline.unit) && written.shape.second !== 'other-unit' && written.shape.unitAt !== 'foreign')
    found.push({ what: 'unit shown otherwise', said: false, detail: timeline.unit });
  const shift = shiftOf(written, timeline);
  const expected = new Map(written.readings.map((reading) => [reading.wall, reading]));
  const missing = new Map(expected);
  for (let i = 0; i < readings.count; i++) {
    const wall = readings.at[i]! + shift;
    const shown = Date.parse(days[readings.day[i]!]!.date) + readings.minute[i]! * MINUTE;
    const one = expected.get(wall);
    const value = `${readings.native[i]} ${UNITS[readings.unit[i]!]} (limit ${readings.limit[i]})`;
    if (!one || Math.floor(clockAt(written, wall).wall / MINUTE) * MINUTE !== shown) {
      found.push({ what: 'reading nobody wrote', said: false, detail: `${clock(shown)} ${value}` });
      continue;
    }
    missing.delete(wall);
    const unit = UNITS[readings.unit[i]!]!;
    const otherUnit = unit !== one.unit && written.shape.second === 'other-unit';
    const foreign = written.shape.unitAt === 'foreign';
    const native = otherUnit || foreign ? readings.mgdl[i]! : readings.native[i]!;
    const truly = otherUnit || foreign ? (one.unit === 'mmol/L' ? one.native * MGDL_PER_MMOL : one.native) : one.native;
    const within = otherUnit
      ? Math.abs(native - truly) <= 1.5
      : foreign
        ? Math.abs(native - truly) < 1e-6 * truly
        : near(native, truly);
    const limit = readings.limit[i] === one.limit && (one.limit === 0 || !one.bound || within);
    const same =
      limit &&
      (one.limit !== 0 || within) &&
      (unit === one.unit || otherUnit || foreign || (one.limit !== 0 && !one.bound));
    if (!same && !written.loose.has(placeKey(one)))
      found.push({
        what:
          one.limit !== readings.limit[i]
            ? 'limit otherwise'
            : unit !== one.unit
              ? 'unit otherwise'
              : 'value otherwise',
        said: false,
        detail: `${clock(wall)} ${value}, written ${one.native} ${one.unit} (limit ${one.limit}), ${placeKey(one)}`,
      });
  }
  for (const one of missing.values()) {
    const said = aside.has(placeKey(one));
    if (said && written.loose.has(placeKey(one))) continue;
    found.push({
      what: 'reading lost',
      said,
      detail: `${clock(one.wall)} ${one.native} ${one.unit}, ${placeKey(one)}`,
    });
  }
  return found;
}

const UNITS_WITHOUT_WORDS = new Set([undefined, '']);

function noteDifferences(written: Written, timeline: Timeline, aside: Set<string>): Difference[] {
  const found: Difference[] = [];
  const shift = shiftOf(written, timeline);
  const read = timeline.notes.map((note) => ({
    note,
    wall: note.timed ? note.at + shift : Number.NaN,
    place: `${sheetName(note.origin.file)}:${note.origin.line}`,
    used: false,
    words: [note.label ?? '', note.text ?? ''].join(' '),
  }));
  for (const one of written.notes) {
    const here = read.filter(({ place }) => place === placeKey(one));
    const kin = here.find((entry) => !entry.used && entry.note.kind === one.kind && amountFits(one, entry.note.amount));
    const fallback = kin ?? here.find((entry) => !entry.used && entry.note.kind === one.kind);
    const label = `${one.word} ${one.amount ?? one.minutes ?? ''} ${one.words.join(' ')}`.trim();
    if (!fallback) {
      found.push({
        what: `${one.kind} lost`,
        said: aside.has(placeKey(one)),
        detail: `${clock(one.wall)} ${label}, ${placeKey(one)}`,
      });
      continue;
    }
    fallback.used = true;
    const { note, wall } = fallback;
    const detail = `${clock(one.wall)} ${label}, ${placeKey(one)}; read ${JSON.stringify([note.kind, note.amount, note.unit, note.minutes, note.label, note.text])}`;
    if (wall !== one.wall)
      found.push({
        what: `${one.kind} at another time`,
        said: false,
        detail: `${detail} at ${Number.isNaN(wall) ? 'no time' : clock(wall)}`,
      });
    if (one.amount !== undefined && (note.amount === undefined || !near(note.amount, one.amount)))
      found.push({
        what: note.amount === undefined ? `${one.kind} amount lost` : `${one.kind} amount otherwise`,
        said: false,
        detail,
      });
    else if (one.unit && note.unit !== one.unit && !(UNITS_WITHOUT_WORDS.has(note.unit) && !unitWritten(written)))
      found.push({ what: `${one.kind} unit otherwise`, said: false, detail });
    if (one.minutes !== undefined && (note.minutes ?? (unitWritten(written) ? undefined : one.minutes)) !== one.minutes)
      found.push({ what: 'minutes otherwise', said: false, detail });
    const words = here
      .map((entry) => entry.words)
      .join(' ')
      .replaceAll(/\s+/g, ' ');
    const bare = (text: string) => text.replaceAll(/["\s]|so(?=")/g, '');
    if (!one.words.every((word) => bare(words).includes(bare(word)) || words.replaceAll('"so" ', '').includes(word)))
      found.push({ what: `${one.kind} words lost`, said: false, detail });
  }
  for (const { note, used, wall, words } of read) {
    if (used || isOfFood(written, note)) continue;
    found.push({
      what: `${note.kind} nobody wrote`,
      said: note.kind === 'text',
      detail: `${Number.isNaN(wall) ? 'no time' : clock(wall)} ${note.amount ?? note.minutes ?? ''} ${note.unit ?? ''} ${words}, line ${note.origin.line}`,
    });
  }
  return found;
}

/** Protein beside carbohydrate is food without an amount of it. */
const isOfFood = ({ shape }: Written, { kind, amount, text }: Timeline['notes'][number]): boolean =>
  shape.decoy === 'protein' &&
  kind === 'meal' &&
  !amount &&
  upper(text ?? '', shape).includes(upper(allWords.get(shape.language)!.decoys.protein!, shape));

/** Headers may stand in capitals. */
const upper = (text: string, { language }: Written['shape']): string => text.toLocaleUpperCase(language);

const amountFits = (one: TrueNote, amount: number | undefined): boolean =>
  one.amount === undefined || (amount !== undefined && near(amount, one.amount));

/** A shared column of amounts without a column of units says no unit of theirs. */
const unitWritten = ({ shape }: Written): boolean =>
  shape.notes !== 'kind-shared' || shape.unitAt.startsWith('column') || shape.unitAt === 'cell';

function asideDifferences(written: Written, { notes }: Timeline, aside: Set<string>): Difference[] {
  // A row whose reading is no number is used where protein stands beside it.
  const eaten = new Set(
    notes.flatMap((note) => (isOfFood(written, note) ? [`${sheetName(note.origin.file)}:${note.origin.line}`] : [])),
  );
  const bad = new Set(written.bad.map(placeKey));
  const silent = [...bad].filter((place) => !aside.has(place) && !eaten.has(place));
  const holding = new Set([...written.readings, ...written.notes].map(placeKey));
  const more = [...aside].filter((place) => !bad.has(place) && !written.loose.has(place) && !holding.has(place));
  return [
    ...silent.map((place) => ({ what: 'bad line not told', said: false, detail: place })),
    ...more.map((place) => ({ what: 'good line set aside', said: true, detail: place })),
  ];
}
