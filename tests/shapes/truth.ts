import { readFileSync } from 'node:fs';
import type { Chance } from '../../src/stats/chance.ts';
import { MGDL_PER_MMOL } from '../../src/units.ts';
import { gauss } from '../support/simulatedDays.ts';
import { CHANGES, type ClockChange } from './clockChange.ts';
import { pick, type Shape } from './shape.ts';
import type { Words } from './words.ts';

export type Unit = 'mg/dL' | 'mmol/L';

export interface TrueReading {
  wall: number;
  native: number;
  unit: Unit;
  limit: -1 | 0 | 1;
  /** Whether the bound of a limit is written. */
  bound: boolean;
}

export interface TrueNote {
  wall: number;
  kind: 'insulin' | 'insulin-rate' | 'meal' | 'exercise' | 'fingerstick' | 'medication' | 'text';
  /** Which of the kinds of words.ts it is. */
  word: 'rapid' | 'long' | 'meal' | 'exercise' | 'fingerstick' | 'medicine' | 'note';
  amount?: number;
  unit?: string;
  minutes?: number;
  /** Must come back in the entry's own words. */
  words: string[];
}

export interface Truth {
  readings: TrueReading[];
  notes: TrueNote[];
  /** Minutes from world time, before any change of the clocks. */
  offset: number;
  change?: ClockChange;
}

const MINUTE = 60_000;
const DAY = 1440 * MINUTE;
const STARTS: Record<string, number> = {
  late: Date.UTC(2026, 0, 14, 7, 0),
  early: Date.UTC(2026, 1, 3, 7, 0),
  'new-year': Date.UTC(2025, 11, 30, 7, 0),
};

interface Raw {
  wall: number;
  mgdl: number;
}

const cache = new Map<string, Raw[]>();
function published(file: string, factor: number): Raw[] {
  const known = cache.get(file);
  if (known) return known;
  const found: Raw[] = [];
  for (const line of readFileSync(new URL(file, import.meta.url), 'utf8')
    .split(/\r?\n/)
    .slice(1, 900)) {
    const [when, value] = line.split(',');
    const at = /^(\d\d)\/(\d\d)\/(\d{4}) (\d\d):(\d\d)/.exec(when ?? '');
    const iso = /^(\d{4})-(\d\d)-(\d\d) (\d\d):(\d\d)/.exec(when ?? '');
    if (!value || !(at || iso)) continue;
    const [y, m, d, h, i] = at ? [at[3], at[2], at[1], at[4], at[5]] : iso!.slice(1);
    const wall = Date.UTC(Number(y), Number(m) - 1, Number(d), Number(h), Number(i));
    if (found.length > 0 && wall <= found.at(-1)!.wall) continue;
    found.push({ wall, mgdl: Number(value) * factor });
  }
  cache.set(file, found);
  return found;
}

const REAL: Record<string, [string, number]> = {
  'real-mmol': ['../data/t1d_uom/glucose-2320.csv', MGDL_PER_MMOL],
  'real-mg': ['series/bigideas-001.csv', 1],
  'real-long': ['series/hupa-0011.csv', 1],
};

/** A smooth invented curve: waves of a day and of meals, and a little noise. */
function invented(step: number, count: number, always: boolean, next: Chance): Raw[] {
  const [a, b, c] = [next() * 6, next() * 6, next() * 6];
  const level = always ? 370 : 110 + 50 * next();
  const swing = always ? 0.4 : 0.8 + 0.5 * next();
  let noise = 0;
  return Array.from({ length: count }, (_, k) => {
    const t = (k * step) / 60;
    noise = 0.8 * noise + gauss(next) * Math.min(2.5, step / 2);
    const wave = 38 * Math.sin(t / 3.8 + a) + 24 * Math.sin(t / 1.7 + b) + 14 * Math.sin(t / 0.9 + c);
    return { wall: k * step * MINUTE, mgdl: Math.max(42, level + swing * wave + noise) };
  });
}

function rawSeries(shape: Shape, next: Chance): Raw[] {
  const real = REAL[shape.series];
  if (real) {
    const all = published(...real);
    const from = Math.floor(next() * Math.max(1, all.length - 520));
    return all.slice(from, from + 520);
  }
  if (shape.series === 'minute') return invented(1, 1700, false, next);
  if (shape.series === 'quarter') return invented(15, 300, false, next);
  return invented(
    shape.series === 'always-high' ? 15 : 5,
    shape.series === 'always-high' ? 300 : 640,
    shape.series === 'always-high',
    next,
  );
}

/** How a number of the file's unit is rounded when its sensor rounds. */
function native(mgdl: number, shape: Shape, k: number): number {
  const unit = shape.unit as Unit;
  const value = unit === 'mg/dL' ? mgdl : mgdl / MGDL_PER_MMOL;
  if (shape.number === 'long') {
    if (shape.series === 'real-long' && unit === 'mg/dL') return value;
    return unit === 'mg/dL' ? Math.round(value) + (k % 3) / 3 : value;
  }
  return unit === 'mg/dL' ? Math.round(value) : Math.round(value * 10) / 10;
}

const TOPS = { 'mg/dL': [40, 400], 'mmol/L': [2.2, 22.2] } as const;

export function truthOf(shape: Shape, words: Words, seconds: boolean, next: Chance): Truth {
  const raw = rawSeries(shape, next);
  const changes = CHANGES[shape.start];
  const offset = pick(changes ? Object.keys(changes).map(Number) : [120, -300, 330], next);
  const change = changes?.[offset];
  // A change of the clocks stands in the middle of a series.
  const start = change ? change.at - (raw.at(-1)!.wall - raw[0]!.wall) / 2 - 7 * 60 * MINUTE : STARTS[shape.start]!;
  const shift = change
    ? Math.floor(start / MINUTE) * MINUTE - Math.floor(raw[0]!.wall / MINUTE) * MINUTE
    : Math.floor(start / DAY) * DAY - Math.floor(raw[0]!.wall / DAY) * DAY;
  const extra = (seconds ? 17_000 : 0) + (REAL[shape.series] ? 0 : 7 * 60 * MINUTE + Math.floor(next() * 5) * MINUTE);
  const unit = shape.unit as Unit;
  const [bottom, top] = TOPS[unit];
  const limited = shape.limits !== 'none';
  const lowAt = Math.floor(next() * 60);
  const readings = raw.map(({ wall, mgdl }, k): TrueReading => {
    const at = wall + shift + extra;
    const value = native(mgdl, shape, k);
    const low = limited && k % 97 >= lowAt && k % 97 < lowAt + 3;
    const high = limited && k % 131 >= lowAt + 40 && k % 131 < lowAt + 42;
    const bound = shape.limits !== 'words' && shape.limits !== 'short';
    if (low) return { wall: at, native: bottom, unit, limit: -1, bound };
    if (high) return { wall: at, native: top, unit, limit: 1, bound };
    // A sensor never says more than its own top.
    return {
      wall: at,
      native: Math.min(Math.max(value, bottom), shape.series === 'always-high' ? 1000 : top),
      unit,
      limit: 0,
      bound,
    };
  });
  return {
    readings,
    notes: (shape.notes === 'none' && shape.second === 'none' ? [] : notesOf(shape, words, readings, next)).filter(
      // Which of two hours alike a lone note was written in, nobody can tell.
      ({ wall }) => !change || Math.abs(wall - change.at) > 2 * 60 * MINUTE,
    ),
    offset,
    ...(change ? { change } : {}),
  };
}

function notesOf(shape: Shape, words: Words, readings: TrueReading[], next: Chance): TrueNote[] {
  const notes: TrueNote[] = [];
  const first = readings[0]!.wall;
  const last = readings.at(-1)!.wall;
  const used = new Set<number>();
  const add = (hour: number, day: number, note: Omit<TrueNote, 'wall'>): void => {
    const about = first + day * DAY + hour * 60 * MINUTE;
    const near =
      readings[
        Math.min(readings.length - 1, Math.max(0, Math.round(((about - first) / (last - first)) * readings.length)))
      ]!.wall;
    let wall = next() < 0.5 ? near : near + (1 + Math.floor(next() * 3)) * MINUTE;
    while (used.has(wall)) wall += 2 * MINUTE;
    if (about > last || wall > last) return;
    used.add(wall);
    notes.push({ wall, ...note });
  };
  const fingers = ['finger', 'nameless-few'].includes(shape.second) || shape.notes === 'kind-shared';
  if (fingers)
    for (let day = 0; day * DAY < last - first; day++)
      for (const hour of [2, 7.5, 13]) {
        const base = shape.unit === 'mg/dL' ? Math.round(80 + next() * 140) : Math.round((4.5 + next() * 8) * 10) / 10;
        add(hour, day, { kind: 'fingerstick', word: 'fingerstick', amount: base, unit: shape.unit, words: [] });
      }
  if (shape.notes === 'none') return notes.sort((a, b) => a.wall - b.wall);
  for (let day = 0; day * DAY < last - first; day++) {
    for (const hour of [1, 6, 12]) {
      add(hour, day, {
        kind: 'meal',
        word: 'meal',
        amount: 15 + Math.floor(next() * 70),
        unit: 'g',
        words: [pick(words.foods, next)],
      });
      const dose = Math.round((1 + next() * 9) * 10) / 10;
      add(hour + 0.2, day, { kind: 'insulin', word: 'rapid', amount: dose, unit: 'IU', words: [] });
    }
    add(15, day, { kind: 'insulin', word: 'long', amount: 8 + Math.floor(next() * 20), unit: 'IU', words: [] });
    add(9, day, {
      kind: 'exercise',
      word: 'exercise',
      minutes: 20 + Math.floor(next() * 60),
      words: [pick(words.moves, next)],
    });
    add(4, day, { kind: 'text', word: 'note', words: [pick(words.remarks, next)] });
    add(3, day, { kind: 'medication', word: 'medicine', words: [pick(words.pills, next)] });
  }
  return fewEach(
    shape,
    notes.sort((a, b) => a.wall - b.wall),
  );
}

/** Of each kind no more than the shape has. */
function fewEach(shape: Shape, notes: TrueNote[]): TrueNote[] {
  const most = { many: notes.length, two: 2, one: 1 }[shape.each] ?? notes.length;
  const counts = new Map<string, number>();
  return notes.filter(({ word }) => {
    counts.set(word, (counts.get(word) ?? 0) + 1);
    return counts.get(word)! <= most;
  });
}
