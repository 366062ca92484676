import { clock } from './clock.ts';
import { planDays } from './days.ts';
import { type Lived, live } from './live.ts';
import type { Bout, Happening } from './person.ts';
import { seeded } from './random.ts';
import { ADULT_HABITS, FOUR_MEALS, limited, type Story, toFive } from './story.ts';
import { isoMinute, lines, row, utf8 } from './text.ts';

const time = clock('2026-01-12', 14);
const chance = seeded(11);

function lived(): Lived {
  const random = seeded(280260112);
  const bouts: Bout[] = [1, 3, 6, 8, 12].map((day) => ({
    at: time.at(day, 1040 + 5 * day),
    minutes: 35,
    effort: 0.35,
    label: 'brisk walk',
  }));
  const routine = {
    meals: FOUR_MEALS,
    longActing: { minute: 1320, units: 17, wander: 10, skip: [] },
    lateMornings: { days: [5, 6, 12, 13], by: 70 },
  };
  const plan = planDays(routine, time, bouts, [], random);
  const person = {
    body: {
      weightKg: 72,
      settlesAt: 140,
      usualLongActing: 17,
      sensitivity: 0.0006,
      effectiveness: 0.0015,
      dawn: 0.22,
      secretion: 0,
      answers: 1,
      movement: { during: 0.006, after: 0.6 },
    },
    habits: ADULT_HABITS,
  };
  const wear = {
    puton: [-5 * 1440 - 300, time.at(8, 13 * 60 + 10)],
    holes: [
      { from: time.at(4, 15 * 60), to: time.at(4, 15 * 60 + 50) },
      { from: time.at(10, 2 * 60 + 20), to: time.at(10, 4 * 60 + 5) },
    ],
    pressed: [{ from: time.at(8, 3 * 60 + 12), to: time.at(8, 3 * 60 + 54), depth: 0.45 }],
    firstDay: -0.1,
    noise: 5,
  };
  return live(person, plan, wear, time, random);
}

/** How often each kind is written down at all. */
const WRITTEN: Record<Happening['why'], number> = {
  meal: 0.75,
  low: 0.6,
  high: 0.7,
  routine: 0.8,
  'before-exercise': 1,
};

function logbook(happenings: Happening[]): string[] {
  const head = ['When', 'Carbs (g)', 'Food', 'Insulin (IU)', 'Insulin kind', 'Exercise (min)', 'Exercise kind'];
  const rows = [row([...head, 'Fingerstick (mg/dL)', 'Medicine', 'Remark'], ',')];
  const extra: Happening[] = [
    { at: time.at(2, 21 * 60 + 30), kind: 'text', text: 'early night, sore throat', why: 'before-exercise' },
    { at: time.at(8, 13 * 60 + 10), kind: 'text', text: 'new sensor, left arm', why: 'before-exercise' },
    {
      at: time.at(8, 17 * 60 + 15),
      kind: 'fingerstick',
      amount: 131,
      text: 'check after change',
      why: 'before-exercise',
    },
    { at: time.at(5, 8 * 60), kind: 'medication', label: 'vitamin D', why: 'before-exercise' },
    { at: time.at(12, 8 * 60 + 20), kind: 'medication', label: 'vitamin D', why: 'before-exercise' },
  ];
  const all = [...happenings, ...extra].sort((a, b) => a.at - b.at);
  for (const h of all) {
    if (h.kind === 'alarm' || !chance.chance(WRITTEN[h.why])) continue;
    const is = (kind: Happening['kind']) => h.kind === kind;
    rows.push(
      row(
        [
          isoMinute(time.wall(toFive(h.at))),
          is('meal') ? h.amount : '',
          is('meal') ? h.label : '',
          is('insulin') ? h.amount : '',
          is('insulin') ? h.label : '',
          is('exercise') ? h.minutes : '',
          is('exercise') ? h.label : '',
          is('fingerstick') ? h.amount : '',
          is('medication') ? h.label : '',
          h.text ?? (h.why === 'low' ? 'felt shaky' : ''),
        ],
        ',',
      ),
    );
  }
  return rows;
}

export const steadyFortnight: Story & { lived(): Lived } = {
  folder: 'steady-fortnight',
  lived,
  files() {
    const { readings, happenings } = lived();
    const rows = readings.map((r) =>
      row([isoMinute(time.wall(r.at)), limited(r.value, 40, 400, 'below 40', 'above 400')], ','),
    );
    return {
      'readings.csv': utf8(lines(['When,Sensor glucose (mg/dL)', ...rows])),
      'logbook.csv': utf8(lines(logbook(happenings))),
    };
  },
};
