import { type Clock, clock } from './clock.ts';
import { planDays } from './days.ts';
import { type Lived, live } from './live.ts';
import type { Bout, Happening, Meal } from './person.ts';
import { seeded } from './random.ts';
import { ADULT_HABITS, FOUR_MEALS, limited, type Story, toFive } from './story.ts';
import { isoMinute, lines, row, utf8 } from './text.ts';

const DAYS = 28;
/** The sensor is read every quarter of an hour. */
const QUARTER = 15;
/** Evenings with football, from the third visit on. */
const FOOTBALL = [1, 4, 6, 9, 11, 14, 17, 20, 22, 25];

interface Stay {
  from: string;
  seed: number;
  football: boolean;
  /** Whether bread and milk are eaten after football, as was agreed at the third visit. */
  fed: boolean;
}

const VISITS: Record<'first' | 'second' | 'third' | 'fourth', Stay> = {
  first: { from: '2026-01-05', seed: 52, football: false, fed: false },
  second: { from: '2026-03-02', seed: 57, football: false, fed: false },
  third: { from: '2026-05-04', seed: 60, football: true, fed: false },
  fourth: { from: '2026-07-06', seed: 45, football: true, fed: true },
};

function lived({ seed, football, fed }: Stay, time: Clock): Lived {
  const random = seeded(seed);
  const bouts: Bout[] = football
    ? FOOTBALL.map((day, i) => ({
        at: time.at(day, 1105 + 5 * (i % 4)),
        minutes: 60 + 5 * (i % 3),
        effort: 0.9,
        label: 'football',
      }))
    : [];
  const fedAfter = (bout: Bout, minutes: number, grams: number, food: string, slow: number): Meal => ({
    at: bout.at + minutes,
    grams,
    food,
    minutes: slow,
    doseAfter: null,
    doseShare: 0,
    why: 'before-exercise',
  });
  const extra = bouts.flatMap((bout) =>
    fed ? [fedAfter(bout, -20, 55, 'banana', 40), fedAfter(bout, bout.minutes + 150, 70, 'bread and milk', 140)] : [],
  );
  // Dinner is dosed a quarter of an hour after the first bite, all year.
  const meals = FOUR_MEALS.map((meal) =>
    meal.minute === 1125 ? { ...meal, minute: 1215, doseAfter: 25, forgotten: 0.12 } : meal,
  );
  const routine = {
    meals,
    longActing: { minute: 1340, units: 18, wander: 12, skip: [] },
    lateMornings: { days: [5, 6, 12, 13, 19, 20, 26, 27], by: 75 },
  };
  const person = {
    body: {
      weightKg: 64,
      settlesAt: 176,
      usualLongActing: 18,
      sensitivity: 0.0006,
      effectiveness: 0.0025,
      dawn: 0.18,
      secretion: 0,
      answers: 0.3,
      movement: { during: 0.008, after: 4.6 },
    },
    habits: {
      ...ADULT_HABITS,
      treatsLow: { awake: 0.5, asleep: 0.03 },
      varies: { spread: 0.22, lasts: 0.7 },
      guess: 0.28,
    },
  };
  const wear = {
    puton: [-3 * 1440, time.at(11, 9 * 60 + 15), time.at(25, 9 * 60 + 40)],
    holes: [{ from: time.at(8, 15 * 60), to: time.at(8, 17 * 60) }],
    pressed: [],
    firstDay: 0.05,
    noise: 4.5,
  };
  return live(person, planDays(routine, time, bouts, extra, random), wear, time, random);
}

const WRITTEN: Record<Happening['why'], number> = {
  meal: 0.5,
  low: 0.6,
  high: 0.7,
  routine: 1,
  'before-exercise': 1,
};

function logbook({ happenings }: Lived, time: Clock, seed: number): string[] {
  const chance = seeded(seed + 1000);
  const rows = [
    row(['When', 'Carbs (g)', 'Food', 'Insulin (IU)', 'Insulin kind', 'Exercise (min)', 'Exercise kind'], ','),
  ];
  for (const h of happenings) {
    // The long-acting dose is never written down.
    if (h.kind === 'alarm' || h.label === 'long-acting' || !chance.chance(WRITTEN[h.why])) continue;
    const of = (kind: Happening['kind']) => h.kind === kind;
    rows.push(
      row(
        [
          isoMinute(time.wall(toFive(h.at))),
          of('meal') ? h.amount : '',
          of('meal') ? h.label : '',
          of('insulin') ? h.amount : '',
          of('insulin') ? h.label : '',
          of('exercise') ? h.minutes : '',
          of('exercise') ? h.label : '',
        ],
        ',',
      ),
    );
  }
  return rows;
}

function exportsOf(stay: Stay): [readings: Uint8Array, notes: Uint8Array] {
  const time = clock(stay.from, DAYS);
  const days = lived(stay, time);
  const readings = days.readings
    .filter(({ at }) => at % QUARTER === 0)
    .map(({ at, value }) => row([isoMinute(time.wall(at)), limited(value, 40, 400, 'below 40', 'above 400')], ','));
  return [utf8(lines(['When,Sensor glucose (mg/dL)', ...readings])), utf8(lines(logbook(days, time, stay.seed)))];
}

export const fourVisits: Story = {
  folder: 'four-visits',
  files() {
    const { fourth, ...earlier } = VISITS;
    const [readings, notes] = exportsOf(fourth);
    return {
      'readings.csv': readings,
      'logbook.csv': notes,
      ...Object.fromEntries(
        Object.entries(earlier).flatMap(([name, stay]) => {
          const [read, noted] = exportsOf(stay);
          return [
            [`earlier/${name}-readings.csv`, read],
            [`earlier/${name}-logbook.csv`, noted],
          ];
        }),
      ),
    };
  },
};
