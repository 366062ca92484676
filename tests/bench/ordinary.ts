import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * Invented people such as a clinic for adults with type 1 diabetes sees: most of them well within reach of their goals, nearly
 * all with a short very low event now and then, a few whose days nobody may overlook. Shares and spreads are of our own making,
 * after what the consensus calls usual (Battelino 2019); nobody's data: `tsx tests/bench/ordinary.ts <folder> [people] [visit]`.
 */
const START = Date.UTC(2026, 1, 2);
const DAY = 1440;
const STEP = 5;

/** Noise from 0 to 1 (a linear congruential step, Numerical Recipes' constants, from memory). */
function noise(seed: number): () => number {
  let state = (seed * 2654435761 + 12345) >>> 0;
  const next = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  for (let i = 0; i < 20; i++) next();
  return next;
}

const bump = (minutes: number): number => (minutes < 0 ? 0 : (minutes / 60) * Math.exp(1 - minutes / 60));
const stamp = (minute: number): string =>
  new Date(START + minute * 60_000).toISOString().slice(0, 16).replace('T', ' ');

interface OrdinaryPerson {
  code: string;
  readings: string;
  notes: string;
}

/** `visit`: which fortnight, from 0. One in thirty has a day above everything, without insulin noted; one in forty stopped early. */
function ordinaryPerson(number: number, visit = 0, days = 14): OrdinaryPerson {
  const own = noise(number + 1);
  const level = 124 + 66 * own();
  const swing = 30 + 70 * own();
  const wobble = 4 + 5 * own();
  const often = own() < 0.08;
  const dips = often ? 22 : 1.5 + 11 * own() ** 1.5;
  const atNight = own() < 0.3 ? 0.6 : 0.15;
  const [breaks, stops] = [number % 30 === 17, number % 40 === 23];
  const next = noise((number + 1) * 7919 + visit * 104_729);
  const from = visit * days * DAY;
  const seen = stops ? 6 : days;
  const lows = Array.from({ length: Math.round(dips + 2 * next()) }, () => {
    const clock = next() < atNight ? 60 + 240 * next() : 600 + 700 * next();
    return {
      at: Math.floor(next() * days) * DAY + clock,
      lowest: 42 + 26 * next(),
      wide: (15 + 55 * next() ** 2) * (often ? 1.7 : 1),
    };
  });
  const readings = ['Time,Sensor glucose (mg/dL)'];
  let drift = 0;
  for (let minute = 0; minute < seen * DAY; minute += STEP) {
    const clock = minute % DAY;
    drift = drift * 0.985 + (next() - 0.5) * wobble;
    const meals = [450, 780, 1170].reduce((sum, meal) => sum + bump(clock - meal), 0);
    const broken = breaks && minute > 4.4 * DAY && minute < 5.1 * DAY ? 170 : 0;
    const usual = level + swing * meals + drift * 2 + broken;
    const value = lows.reduce((now, { at, lowest, wide }) => {
      const share = Math.exp(-(((minute - at) / wide) ** 2));
      return now * (1 - share) + Math.min(now, lowest) * share;
    }, usual);
    readings.push(`${stamp(from + minute)},${Math.min(400, Math.max(41, Math.round(value)))}`);
  }
  const notes = ['Time,Carbohydrate (g),Rapid insulin (IU)'];
  for (let day = 0; day < seen; day++) {
    for (const meal of [445, 775, 1165]) {
      if (breaks && (day === 4 || day === 5)) continue;
      const grams = Math.round(35 + next() * 40);
      notes.push(`${stamp(from + day * DAY + meal + Math.floor(next() * 15))},${grams},${Math.round(grams / 9)}`);
    }
  }
  const code = `P-${String(number + 1).padStart(4, '0')}`;
  return { code, readings: `${readings.join('\n')}\n`, notes: `${notes.join('\n')}\n` };
}

/** A folder of them. */
function writeOrdinary(folder: string, count: number, visit = 0): void {
  for (let number = 0; number < count; number++) {
    const { code, readings, notes } = ordinaryPerson(number, visit);
    mkdirSync(join(folder, code), { recursive: true });
    writeFileSync(join(folder, code, 'sensor.csv'), readings);
    writeFileSync(join(folder, code, 'logbook.csv'), notes);
  }
}

const [folder = 'ordinary', people = '100', visit = '0'] = process.argv.slice(2);
writeOrdinary(folder, Number(people), Number(visit));
