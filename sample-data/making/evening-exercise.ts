import { clock } from './clock.ts';
import { planDays } from './days.ts';
import { type Lived, live } from './live.ts';
import type { Bout, Meal } from './person.ts';
import { seeded } from './random.ts';
import { ADULT_HABITS, FOUR_MEALS, limited, type Story, toFive } from './story.ts';
import { lines, parts, row, utf8 } from './text.ts';

const time = clock('2026-04-13', 28);

/** Evening sessions: day, minutes, how hard, what it was, and whether extra food was eaten first. */
const SESSIONS: [day: number, minute: number, minutes: number, effort: number, label: string, extra: number][] = [
  [1, 1115, 55, 0.9, 'running, hard', 0],
  [5, 1090, 60, 0.8, 'cycling, hard', 35],
  [8, 1110, 45, 0.85, 'running, hard', 30],
  [12, 1095, 55, 0.85, 'football', 0],
  [15, 1115, 50, 0.9, 'running, hard', 0],
  [17, 1120, 35, 0.35, 'easy walk', 0],
  [19, 1090, 65, 0.85, 'cycling, hard', 40],
  [21, 1100, 80, 1.05, 'football', 0],
  [23, 1120, 40, 0.8, 'running, hard', 45],
  [25, 1105, 70, 1, 'cycling, hard', 0],
];

function lived(): Lived {
  const random = seeded(20260413);
  const bouts: Bout[] = SESSIONS.map(([day, minute, minutes, effort, label]) => ({
    at: time.at(day, minute),
    minutes,
    effort,
    label,
  }));
  // The extra food is two helpings: some at once, some that lasts into the night.
  const extra: Meal[] = SESSIONS.filter((session) => session[5] > 0).flatMap(([day, minute, minutes, , , grams]) => [
    {
      at: time.at(day, minute - 20),
      grams,
      food: 'banana and oat bar',
      minutes: 45,
      doseAfter: null,
      doseShare: 0,
      why: 'before-exercise' as const,
    },
    {
      at: time.at(day, minute + minutes + 140),
      grams: 55,
      food: 'bread, peanut butter, milk',
      minutes: 130,
      doseAfter: null,
      doseShare: 0,
      why: 'before-exercise' as const,
    },
  ]);
  const routine = {
    meals: FOUR_MEALS.map((meal) => ({ ...meal, minute: meal.minute === 1125 ? 1215 : meal.minute })),
    longActing: { minute: 1340, units: 19, wander: 12, skip: [] },
    lateMornings: { days: [5, 6, 12, 13, 19, 20, 26, 27], by: 80 },
  };
  const person = {
    body: {
      weightKg: 78,
      settlesAt: 146,
      usualLongActing: 19,
      sensitivity: 0.0006,
      effectiveness: 0.0025,
      dawn: 0.15,
      secretion: 0,
      answers: 0.3,
      movement: { during: 0.008, after: 5.5 },
    },
    habits: {
      ...ADULT_HABITS,
      treatsLow: { awake: 0.5, asleep: 0.025 },
      varies: { spread: 0.2, lasts: 0.7 },
      guess: 0.25,
    },
  };
  const wear = {
    puton: [-2 * 1440, time.at(12, 9 * 60), time.at(26, 10 * 60 + 20)],
    holes: [{ from: time.at(9, 17 * 60), to: time.at(9, 18 * 60 + 20) }],
    pressed: [],
    firstDay: 0.06,
    noise: 4.5,
  };
  const plan = planDays(routine, time, bouts, extra, random);
  // On the evening of the hardest session the food was also overestimated: the one very low night.
  for (const meal of plan.meals) if (meal.at > time.at(21, 1150) && meal.at < time.at(22, 0)) meal.doseShare = 2.2;
  return live(person, plan, wear, time, random);
}

/** The shared table: one row a reading or a note, told apart by the word in the third column. */
function table({ readings, happenings }: Lived): string[] {
  const chance = seeded(4);
  const stamp = (at: number): string[] => {
    const p = parts(time.wall(at));
    return [`${p.month}/${p.day}/${p.year}`, `${p.hour12}:${p.minute} ${p.half}`];
  };
  const rows = readings.map((r) => ({
    at: r.at,
    text: row([...stamp(r.at), 'sensor', limited(r.value, 40, 400, 'LOW', 'HIGH'), 'mg/dL', '', ''], '\t'),
  }));
  const note = (at: number, kind: string, amount: number | '', unit: string, what: string, minutes: number | '' = '') =>
    rows.push({ at, text: row([...stamp(at), kind, amount, unit, what, minutes], '\t') });
  for (const h of happenings) {
    const kept = chance.uniform();
    const at = toFive(h.at);
    if (h.kind === 'exercise') note(at, 'exercise', '', '', h.label ?? '', h.minutes ?? '');
    else if (h.kind === 'alarm') note(h.at, 'alarm', '', '', 'low alarm');
    else if (h.kind === 'insulin' && kept < 0.8) note(at, 'insulin', h.amount ?? '', 'IU', h.label ?? '');
    else if (h.kind === 'meal' && (h.why !== 'meal' || kept < 0.75))
      note(at, 'food', h.amount ?? '', 'g', h.label ?? '');
  }
  const spoken: [number, number, string][] = [
    [1, 1340, 'tired, long run'],
    [12, 615, 'changed sensor'],
    [16, 430, 'woke up sweaty, alarm missed?'],
    [22, 420, 'bad night'],
    [26, 640, 'changed sensor'],
  ];
  for (const [day, minute, text] of spoken) note(time.at(day, minute), 'remark', '', '', text);
  note(time.at(16, 435), 'fingerstick', 88, 'mg/dL', 'after waking');
  note(time.at(26, 14 * 60 + 5), 'fingerstick', 126, 'mg/dL', 'new sensor check');
  const header = row(['Date', 'Time', 'Entry', 'Amount', 'Unit', 'Details', 'Minutes'], '\t');
  return [header, ...rows.sort((a, b) => a.at - b.at).map((r) => r.text)];
}

export const eveningExercise: Story & { lived(): Lived } = {
  folder: 'evening-exercise',
  lived,
  files: () => ({ 'diary.tsv': utf8(lines(table(lived()))) }),
};
