import { clock } from './clock.ts';
import { type MealHabit, planDays } from './days.ts';
import { type Lived, live } from './live.ts';
import type { Bout, Happening } from './person.ts';
import { seeded } from './random.ts';
import { ADULT_HABITS, type Story, toFive } from './story.ts';
import { lines, parts, row } from './text.ts';

/** Sunday 26 October 2025 is day 6: the clocks go back from 04:00 to 03:00. */
const time = clock('2025-10-20', 14, 6);
const MMOL = 18.0156;

const habit = (minute: number, doseAfter: number, foods: MealHabit['foods'], eaten = 0.97): MealHabit => ({
  foods,
  minute,
  wander: 13,
  eaten,
  doseAfter,
  forgotten: 0.03,
  late: 0.15,
});

function lived(): Lived {
  const random = seeded(20251020);
  const meals = [
    habit(425, 0, [
      { name: 'kaurapuuro ja marjoja', grams: 40, minutes: 42 },
      { name: 'ruisleipä ja kananmuna', grams: 28, minutes: 45 },
    ]),
    habit(690, -5, [
      { name: 'lohikeitto', grams: 35, minutes: 55 },
      { name: 'uunijuusto ja perunat', grams: 50, minutes: 55 },
      { name: 'hernekeitto ja pannukakku', grams: 75, minutes: 60 },
    ]),
    habit(890, 0, [{ name: 'pulla ja kahvi', grams: 30, minutes: 35 }], 0.5),
    habit(1065, -5, [
      { name: 'makaronilaatikko', grams: 60, minutes: 58 },
      { name: 'lihapullat ja muusi', grams: 48, minutes: 55 },
      { name: 'salaatti ja kanaa', grams: 20, minutes: 40 },
    ]),
  ];
  const bouts: Bout[] = [2, 5, 9, 11].map((day) => ({
    at: time.at(day, 1010),
    minutes: 45,
    effort: 0.5,
    label: day === 9 ? 'uinti' : 'sauvakävely',
  }));
  const routine = {
    meals,
    longActing: { minute: 1290, units: 20, wander: 10, skip: [] },
    lateMornings: { days: [5, 6, 12, 13], by: 90 },
  };
  const person = {
    body: {
      weightKg: 70,
      settlesAt: 122,
      usualLongActing: 20,
      sensitivity: 0.00052,
      effectiveness: 0.0015,
      dawn: 0.85,
      secretion: 0,
      answers: 1,
      movement: { during: 0.007, after: 0.9 },
    },
    habits: { ...ADULT_HABITS, sleep: { from: 1365, to: 390 }, varies: { spread: 0.3, lasts: 0.75 } },
  };
  const wear = {
    puton: [-8 * 1440, time.at(6, 11 * 60)],
    holes: [{ from: time.at(10, 12 * 60 + 30), to: time.at(10, 13 * 60 + 40) }],
    pressed: [],
    firstDay: -0.08,
    noise: 5,
  };
  return live(person, planDays(routine, time, bouts, [], random), wear, time, random);
}

const stamp = (at: number): string[] => {
  const p = parts(time.wall(at));
  return [`${Number(p.day)}.${Number(p.month)}.${p.year}`, `${p.hour}:${p.minute}`];
};

/** mg/dL -> mmol/L with a decimal comma, one decimal, as sensors there tell it. */
const molar = (mgdl: number): string => (mgdl / MMOL).toFixed(1).replace('.', ',');

function readings({ readings }: Lived): string[] {
  const rows = readings.map(({ at, value }) => {
    const shown = value / MMOL < 2.2 ? 'alle 2,2' : value / MMOL > 22.2 ? 'yli 22,2' : molar(value);
    return row([...stamp(at), shown], ';');
  });
  return [
    'Kudossokerin mittaukset',
    'Keksitty esimerkki - tässä ei ole oikean ihmisen tietoja',
    'Aikavyöhyke;Europe/Helsinki',
    '',
    'Päivämäärä;Kellonaika;Glukoosi (mmol/l)',
    ...rows,
  ];
}

function diary({ happenings }: Lived): string[] {
  const chance = seeded(6);
  const extra: Happening[] = [
    { at: time.at(6, 11 * 60), kind: 'text', text: 'uusi sensori', why: 'routine' },
    { at: time.at(6, 15 * 60), kind: 'fingerstick', amount: 122, why: 'routine' },
    { at: time.at(7, 7 * 60), kind: 'text', text: 'kellot siirrettiin, väsynyt', why: 'routine' },
  ];
  const columns = ['Päivämäärä', 'Kellonaika', 'Hiilihydraatit (g)', 'Ruoka', 'Insuliini (ky)', 'Insuliinin laji'];
  const rows = [row([...columns, 'Liikunta (min)', 'Laji', 'Sormenpää (mmol/l)', 'Muistiinpano'], ';')];
  for (const h of [...happenings, ...extra].sort((a, b) => a.at - b.at)) {
    if (h.kind === 'alarm' || (!extra.includes(h) && !chance.chance(0.7))) continue;
    const cells: (string | number)[] = ['', '', '', '', '', '', '', ''];
    if (h.kind === 'meal') cells.splice(0, 2, h.amount ?? '', h.why === 'low' ? 'glukoositabletteja' : (h.label ?? ''));
    if (h.kind === 'insulin') cells.splice(2, 2, h.amount ?? '', h.label === 'rapid' ? 'pika' : 'pitkä');
    if (h.kind === 'exercise') cells.splice(4, 2, h.minutes ?? '', h.label ?? '');
    if (h.kind === 'fingerstick') cells.splice(6, 1, molar(h.amount ?? 0));
    if (h.kind === 'text') cells.splice(7, 1, h.text ?? '');
    rows.push(row([...stamp(toFive(h.at)), ...cells], ';'));
  }
  return rows;
}

/** Every letter used lies in the first 256 places, where Windows-1252 and Unicode agree. */
const windows1252 = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

function utf16(text: string): Uint8Array {
  const bytes = new Uint8Array(2 + 2 * text.length);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0xfeff, true);
  for (let i = 0; i < text.length; i++) view.setUint16(2 + 2 * i, text.charCodeAt(i), true);
  return bytes;
}

export const autumnClockChange: Story & { lived(): Lived } = {
  folder: 'autumn-clock-change',
  lived,
  files() {
    const days = lived();
    return {
      'mittaukset.csv': windows1252(lines(readings(days), '\r\n')),
      'muistiinpanot.csv': utf16(lines(diary(days), '\r\n')),
    };
  },
};
