import { type Analysis, analyse } from '../../src/analyse.ts';
import type { Input } from '../../src/model/input.ts';
import type { Settings } from '../../src/model/settings.ts';

/** An invented person whose data fill a paper to its edges. */
export interface Stress {
  days: number;
  step?: number;
  /** A low after exercise every evening, with alarm, food and a remark. */
  lowEvenings?: boolean;
  /** No readings from 11 PM to 7 AM. */
  noNights?: boolean;
  remarks?: number;
  /** A pump's rate every half an hour. */
  rates?: boolean;
  /** Letters of every name. */
  letters?: number;
  /** Rows that hold no number. */
  faulty?: number;
  person?: Settings['person'];
}

const START = Date.UTC(2026, 2, 2);
const at = (day: number, minute: number): string =>
  new Date(START + (day * 1440 + minute) * 60_000).toISOString().slice(0, 16).replace('T', ' ');
const named = (word: string, letters = 0): string => word.padEnd(letters, 'mnopqr');

/** Level of glucose at a minute of the day: a swing over the day, and a low from 9 PM to half past 10 that gets deeper. */
function level(day: number, minute: number, low: boolean): number {
  if (low && minute >= 1260 && minute < 1350) return 66 - (day % 5) * 4;
  return Math.round(130 + 60 * Math.sin((minute / 1440) * 6.3 + day) + ((day * 7 + minute) % 9));
}

export function stressAnalysis(stress: Stress): Analysis {
  const {
    days,
    step = 5,
    lowEvenings = false,
    noNights = false,
    remarks = 0,
    rates = false,
    letters,
    faulty = 0,
  } = stress;
  const readings = ['Time,Sensor glucose (mg/dL)'];
  for (let day = 0; day < days; day++)
    for (let minute = 0; minute < 1440; minute += step) {
      if (noNights && (minute < 420 || minute >= 1380)) continue;
      readings.push(`${at(day, minute)},${level(day, minute, lowEvenings)}`);
    }
  for (let row = 0; row < faulty; row++) readings.push(`${at(row % days, 300 + row)},not a number`);
  const notes = ['Time,Food,Carbohydrate (g),Rapid insulin (IU),Exercise,Exercise (min),Alarm,Note'];
  for (let day = 0; day < days; day++) {
    notes.push(`${at(day, 475)},${named('porridge', letters)},45,4,,,,`);
    notes.push(`${at(day, 1100)},${named('pasta', letters)},70,6,,,,`);
    if (!lowEvenings) continue;
    notes.push(`${at(day, 1170)},,,,${named('football', letters)},60,,`);
    notes.push(`${at(day, 1275)},,,,,,low alarm,`);
    notes.push(`${at(day, 1290)},${named('juice', letters)},15,,,,,`);
    notes.push(`${at(day, 1300)},,,,,,,woke up sweaty and could not think for a while ${day}`);
  }
  for (let i = 0; i < remarks; i++)
    notes.push(
      `${at(i % days, 600 + Math.floor(i / days) * 9)},,,,,,,remark ${i} ${'of some length '.repeat(1 + (i % 9))}`,
    );
  const inputs: Input[] = [file('sensor.csv', readings), file('log.csv', notes)];
  if (rates) {
    const rows = ['Time,Long-acting insulin (IU)'];
    for (let i = 0; i < days * 48; i++) rows.push(`${at(0, i * 30)},${(0.4 + (i % 9) / 20).toFixed(2)}`);
    inputs.push(file('rates.csv', rows));
  }
  const last = at(days - 1, 0).slice(0, 10);
  const result = analyse(
    inputs,
    {
      targets: 'adult',
      today: last,
      unit: 'mg/dL',
      period: { days },
      person: stress.person ?? {},
      acceptLosses: ['sensor.csv'],
    },
    'test',
  );
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result;
}

const file = (name: string, lines: readonly string[]): Input => ({
  name,
  bytes: new TextEncoder().encode(`${lines.join('\n')}\n`),
});
