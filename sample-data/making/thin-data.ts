import { clock } from './clock.ts';
import { planDays } from './days.ts';
import { type Lived, live } from './live.ts';
import { seeded } from './random.ts';
import { ADULT_HABITS, FOUR_MEALS, limited, type Story, toFive } from './story.ts';
import { isoMinute, lines, row, utf8 } from './text.ts';

const time = clock('2026-06-26', 5);

function lived(): Lived {
  const random = seeded(20260626);
  const routine = {
    meals: FOUR_MEALS,
    longActing: { minute: 1320, units: 16, wander: 20, skip: [] },
    lateMornings: { days: [1, 2], by: 90 },
  };
  const person = {
    body: {
      weightKg: 64,
      settlesAt: 150,
      usualLongActing: 16,
      sensitivity: 0.0006,
      effectiveness: 0.0015,
      dawn: 0.2,
      secretion: 0,
      answers: 1,
      movement: { during: 0, after: 0 },
    },
    habits: ADULT_HABITS,
  };
  // The receiver lies in the kitchen at night, and stayed in a bag on Sunday afternoon.
  const nights = [0, 1, 2, 3, 4, 5].map((day) => ({
    from: time.at(day, 0) - 70 - 13 * day,
    to: time.at(day, 425 + 17 * day),
  }));
  const wear = {
    puton: [-1440],
    holes: [...nights, { from: time.at(2, 800), to: time.at(2, 1100) }],
    pressed: [],
    firstDay: 0,
    noise: 6,
  };
  return live(person, planDays(routine, time, [], [], random), wear, time, random);
}

/** Rows no importer should trust, and where they stand: after the reading nearest to that minute. */
const BROKEN: { day: number; minute: number; texts: string[] }[] = [
  { day: 0, minute: 780, texts: ['2026-06-26 25:10,133', '2026-06-26 13:02,error'] },
  { day: 1, minute: 900, texts: ['2026-06-27 15:01,???', '2026-06-27 15:02,', '2026-06-27 15:04,---', ''] },
  { day: 1, minute: 1200, texts: ['2026-06-27 20:01,0', '2026-06-27 20:02,9999', '1970-01-01 00:00,120'] },
  { day: 2, minute: 648, texts: ['2026-06-28 10:48,201'] },
  { day: 3, minute: 700, texts: ['2062-06-29 11:41,118', 'When,Glucose (mg/dL)'] },
];

function readings({ readings }: Lived): string[] {
  const rows = readings.map((r) => ({
    at: r.at,
    text: row([isoMinute(time.wall(r.at)), limited(r.value, 40, 400, 'below 40', 'above 400')], ','),
  }));
  for (const { day, minute, texts } of BROKEN) {
    for (const text of texts) rows.push({ at: time.at(day, minute) + 0.5, text });
  }
  // Sent twice: twelve rows of Sunday morning stand there again.
  const sent = rows.filter((r) => r.at >= time.at(2, 600) && r.at < time.at(2, 636));
  for (const { text } of sent) rows.push({ at: time.at(2, 640), text });
  rows.sort((a, b) => a.at - b.at);
  const after = ['2026-06-31 08:00,112', '2026-06-31 08:03,115', 'Average,163', 'Total rows,1214'];
  return ['When,Glucose (mg/dL)', ...rows.map((r) => r.text), ...after];
}

function notes({ happenings }: Lived): string[] {
  const chance = seeded(1);
  const rows = ['When,Carbs (g),Insulin (IU),Remark'];
  for (const h of happenings) {
    if ((h.kind !== 'meal' && h.kind !== 'insulin') || !chance.chance(0.25)) continue;
    const when = isoMinute(time.wall(toFive(h.at)));
    rows.push(row([when, h.kind === 'meal' ? h.amount : '', h.kind === 'insulin' ? h.amount : '', ''], ','));
  }
  rows.push(
    '2026-06-28,,,visit from family',
    '2026-06-29 19:30,2 slices,,"dinner out, guessed"',
    '2026-06-29 19:35,,6+2,',
  );
  return rows;
}

export const thinData: Story & { lived(): Lived } = {
  folder: 'thin-data',
  lived,
  files() {
    const days = lived();
    return { 'readings.csv': utf8(lines(readings(days))), 'notes.csv': utf8(lines(notes(days))) };
  },
};
