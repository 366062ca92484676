import { clock } from './clock.ts';
import { planDays } from './days.ts';
import { BREAKFASTS, DINNERS, LUNCHES, SNACKS } from './foods.ts';
import { type Lived, live } from './live.ts';
import type { Bout, Happening } from './person.ts';
import { seeded } from './random.ts';
import { ADULT_HABITS, limited, type Story } from './story.ts';
import { lines, parts, utf8 } from './text.ts';

const time = clock('2026-02-02', 14);

function lived(): Lived {
  const random = seeded(80260202);
  const meal = { wander: 9, eaten: 1, forgotten: 0, late: 0.06, doseAfter: -15 };
  const routine = {
    meals: [
      { ...meal, foods: BREAKFASTS, minute: 430 },
      { ...meal, foods: SNACKS, minute: 610, eaten: 0.6, doseAfter: -5 },
      { ...meal, foods: LUNCHES, minute: 755 },
      { ...meal, foods: SNACKS, minute: 940, eaten: 0.7, doseAfter: -5 },
      { ...meal, foods: DINNERS.filter((food) => food.name !== 'pizza'), minute: 1110 },
      { ...meal, foods: SNACKS, minute: 1290, eaten: 0.5, forgotten: 0.9 },
    ],
    longActing: { minute: 1310, units: 24, wander: 8, skip: [] },
    lateMornings: { days: [5, 6, 12, 13], by: 45 },
  };
  const bouts: Bout[] = [0, 2, 3, 6, 7, 9, 11, 13].map((day) => ({
    at: time.at(day, 1170),
    minutes: 25,
    effort: 0.3,
    label: 'walk',
  }));
  const plan = planDays(routine, time, bouts, [], random);
  for (const eaten of plan.meals) {
    const breakfast = time.minute(eaten.at) < 560;
    // Mornings resist; from the second week the breakfast is smaller and dosed earlier.
    if (breakfast && time.day(eaten.at) < 7) eaten.doseShare = 0.65;
    if (breakfast && time.day(eaten.at) >= 7) eaten.grams = Math.min(eaten.grams, 30);
  }
  const person = {
    body: {
      weightKg: 76,
      settlesAt: 101,
      usualLongActing: 24,
      sensitivity: 0.0005,
      effectiveness: 0.0015,
      dawn: 0.25,
      secretion: 0,
      answers: 0.5,
      movement: { during: 0.006, after: 0.8 },
    },
    habits: {
      ...ADULT_HABITS,
      ratio: 7.5,
      lowersBy: 30,
      aimsAt: 100,
      correctsAbove: 170,
      guess: 0.28,
      varies: { spread: 0.36, lasts: 0.7 },
      treatsLow: { awake: 0.2, asleep: 0.04 },
      treatsBelow: 60,
      startsAt: 108,
    },
  };
  const wear = {
    puton: [-6 * 1440 - 420, time.at(8, 8 * 60 + 30)],
    holes: [{ from: time.at(3, 9 * 60 + 30), to: time.at(3, 11 * 60) }],
    pressed: [],
    firstDay: 0.05,
    noise: 4,
  };
  return live(person, plan, wear, time, random);
}

const stamp = (at: number): string => {
  const p = parts(time.wall(at));
  const months = ['Jan', 'Feb', 'Mar'];
  return `${p.day} ${months[Number(p.month) - 1]} ${p.year} ${p.hour}:${p.minute}`;
};

const COLUMNS = ['When', 'Sensor (mg/dL)', 'Finger (mg/dL)', 'Carbs (g)', 'Food', 'Insulin (IU)', 'Insulin kind'];

/** One wide sheet, every cell quoted: what was written down stands in the row of the nearest reading. */
function sheet({ readings, happenings }: Lived): string[] {
  const chance = seeded(9);
  const extra: Happening[] = [
    { at: time.at(0, 415), kind: 'fingerstick', amount: 104, why: 'routine' },
    { at: time.at(8, 8 * 60 + 30), kind: 'text', text: 'new sensor', why: 'routine' },
    { at: time.at(8, 11 * 60 + 45), kind: 'fingerstick', amount: 118, why: 'routine' },
    { at: time.at(9, 1320), kind: 'text', text: 'week 22 visit on Tuesday', why: 'routine' },
    { at: time.at(11, 425), kind: 'fingerstick', amount: 96, why: 'routine' },
  ];
  const cells = new Map<number, string[]>();
  for (const r of readings) cells.set(r.at, [limited(r.value, 40, 400, '<40', '>400'), ...Array(8).fill('')]);
  for (const h of [...happenings, ...extra]) {
    if (h.kind === 'alarm' || (!extra.includes(h) && !chance.chance(0.88))) continue;
    const at = Math.round(h.at / 3) * 3;
    const line = cells.get(at) ?? Array<string>(9).fill('');
    cells.set(at, line);
    if (h.kind === 'fingerstick') line[1] = String(h.amount);
    if (h.kind === 'meal') line.splice(2, 2, String(h.amount), h.label ?? '');
    if (h.kind === 'insulin') line.splice(4, 2, String(h.amount), h.label ?? '');
    if (h.kind === 'exercise') line[6] = String(h.minutes);
    if (h.kind === 'text') line[8] = h.text ?? '';
  }
  // Tablets once a day, ticked most mornings.
  for (let day = 0; day < 14; day++) {
    const line = cells.get(time.at(day, 471));
    if (line && chance.chance(0.8)) line[7] = 'iron tablet';
  }
  const quoted = (list: readonly string[]) => list.map((cell) => `"${cell}"`).join(',');
  const rows = [...cells].sort(([a], [b]) => a - b).map(([at, line]) => quoted([stamp(at), ...line]));
  return [quoted([...COLUMNS, 'Walk (min)', 'Medicine', 'Remark']), ...rows];
}

export const pregnancy: Story & { lived(): Lived } = {
  folder: 'pregnancy',
  lived,
  files: () => ({ 'sheet.csv': utf8(`\ufeff${lines(sheet(lived()), '\r\n')}`) }),
};
