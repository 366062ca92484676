import { clock } from './clock.ts';
import { planDays } from './days.ts';
import { BREAKFASTS, DINNERS, LUNCHES, SNACKS } from './foods.ts';
import { type Lived, live } from './live.ts';
import type { Bout, Happening } from './person.ts';
import { seeded } from './random.ts';
import { ADULT_HABITS, limited, type Story, toFive } from './story.ts';
import { lines, parts, row, utf8 } from './text.ts';

const time = clock('2026-05-18', 14);
/** Mornings on which the injection was forgotten. */
const FORGOTTEN = [3, 4, 9, 10];

function lived(): Lived {
  const random = seeded(40260518);
  const meal = { wander: 14, eaten: 0.98, forgotten: 1, late: 0, doseAfter: 0 };
  const routine = {
    meals: [
      { ...meal, foods: BREAKFASTS, minute: 470 },
      { ...meal, foods: LUNCHES, minute: 735 },
      { ...meal, foods: SNACKS, minute: 930, eaten: 0.7 },
      { ...meal, foods: DINNERS, minute: 1065 },
    ],
    longActing: { minute: 490, units: 22, wander: 15, skip: FORGOTTEN },
    lateMornings: { days: [], by: 0 },
  };
  const bouts: Bout[] = [1, 6, 8, 12].map((day) => ({
    at: time.at(day, 645),
    minutes: 30,
    effort: 0.3,
    label: 'garden',
  }));
  const person = {
    body: {
      weightKg: 81,
      settlesAt: 112,
      usualLongActing: 22,
      sensitivity: 0.00058,
      effectiveness: 0.002,
      dawn: 0.1,
      secretion: 0.0035,
      answers: 0.8,
      movement: { during: 0.004, after: 0.8 },
    },
    habits: {
      ...ADULT_HABITS,
      ratio: Number.POSITIVE_INFINITY,
      correctsAbove: Number.POSITIVE_INFINITY,
      sleep: { from: 1320, to: 420 },
      treatsLow: { awake: 0.3, asleep: 0.03 },
      varies: { spread: 0.3, lasts: 0.8 },
      long: 'once-daily',
      startsAt: 150,
    },
  };
  const wear = {
    puton: [-9 * 1440, time.at(5, 9 * 60 + 45)],
    holes: [
      { from: time.at(7, 20 * 60 + 30), to: time.at(8, 40) },
      { from: time.at(11, 13 * 60), to: time.at(11, 14 * 60 + 15) },
    ],
    pressed: [],
    firstDay: -0.07,
    noise: 5,
  };
  return live(person, planDays(routine, time, bouts, [], random), wear, time, random);
}

function notes({ happenings }: Lived): string[] {
  const chance = seeded(2);
  const rows: { at: number; text: string }[] = [];
  const add = (at: number, kind: string, ...cells: (string | number)[]): void => {
    const p = parts(time.wall(toFive(at)));
    rows.push({ at, text: row([`${p.year}/${p.month}/${p.day}`, `${p.hour}:${p.minute}`, kind, ...cells], ',') });
  };
  // A helper fills in the book on some days; whole days stay empty.
  const emptyDays = [2, 3, 4, 7, 10, 13];
  for (const h of happenings) {
    const written = chance.chance(h.kind === 'insulin' ? 0.85 : 0.5) && !emptyDays.includes(time.day(h.at));
    if (!written || h.kind === 'alarm') continue;
    if (h.kind === 'insulin') add(h.at, 'insulin', h.amount ?? '', 'IU', h.label ?? '');
    if (h.kind === 'meal') add(h.at, 'food', '', '', h.label ?? '');
    if (h.kind === 'exercise') add(h.at, 'exercise', h.minutes ?? '', 'min', h.label ?? '');
  }
  const extra: Happening[] = [0, 1, 5, 6, 8, 9, 11, 12].map((day) => ({
    at: time.at(day, 500 + 5 * day),
    kind: 'medication',
    label: 'morning tablets',
    why: 'routine',
  }));
  for (const h of extra) add(h.at, 'medicine', '', '', h.label ?? '');
  add(time.at(5, 585), 'remark', '', '', 'new sensor, daughter helped');
  add(time.at(5, 790), 'fingerstick', 231, 'mg/dL', 'before lunch');
  add(time.at(9, 1130), 'remark', '', '', 'very thirsty, went to bed early');
  add(time.at(11, 505), 'remark', '', '', 'could not remember yesterday, see with daughter');
  const header = row(['Date', 'Time', 'Kind', 'Amount', 'Unit', 'Details'], ',');
  return [header, ...rows.sort((a, b) => a.at - b.at).map((r) => r.text)];
}

export const longHighs: Story & { lived(): Lived } = {
  folder: 'long-highs',
  lived,
  files() {
    const days = lived();
    const rows = days.readings.map(({ at, value }) => {
      const p = parts(time.wall(at));
      const when = `${p.year}/${p.month}/${p.day} ${p.hour}:${p.minute}:12`;
      return row([when, limited(value, 40, 400, 'LOW', 'HIGH')], ',');
    });
    return {
      'sensor.csv': utf8(lines(['Time,Glucose mg/dL', ...rows])),
      'notes.csv': utf8(lines(notes(days))),
    };
  },
};
