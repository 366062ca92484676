import { type Analysis, analyse } from '../../src/analyse.ts';
import { logWords } from '../../src/cli/logWords.ts';
import type { Input } from '../../src/model/input.ts';
import type { Settings } from '../../src/model/settings.ts';

/** An invented person whose data fill a paper to its edges. */
export interface Stress {
  days: number;
  step?: number;
  /** A low after exercise every evening, with alarm, food and a remark; its level. */
  lowEvenings?: boolean;
  veryLow?: boolean;
  /** A wrist device's movements of a few minutes every quarter of an hour by day, and a run of 45 minutes. */
  wrist?: boolean;
  /** As a pump writes its rates where they look like doses. */
  smallDoses?: boolean;
  /** Readings on the first hours of each day only. */
  hours?: number;
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
  /** The last half of the days beside the first. */
  compared?: boolean;
}

const START = Date.UTC(2026, 2, 2);
const at = (day: number, minute: number): string =>
  new Date(START + (day * 1440 + minute) * 60_000).toISOString().slice(0, 16).replace('T', ' ');
const named = (word: string, letters = 0): string => word.padEnd(letters, 'mnopqr');

/** Level of glucose at a minute of the day: a swing over the day, and a low from 9 PM to half past 10 that gets deeper. */
function level(day: number, minute: number, { lowEvenings = false, veryLow = false }: Stress): number {
  if (lowEvenings && minute >= 1260 && minute < 1350) return (veryLow ? 50 : 66) - (day % 5) * (veryLow ? 2 : 4);
  return Math.round(130 + 60 * Math.sin((minute / 1440) * 6.3 + day) + ((day * 7 + minute) % 9));
}

export function stressAnalysis(stress: Stress): Analysis {
  const {
    days,
    step = 5,
    lowEvenings = false,
    noNights = false,
    wrist = false,
    smallDoses = false,
    hours = 24,
    remarks = 0,
    rates = false,
    letters,
    faulty = 0,
  } = stress;
  const readings = ['Time,Sensor glucose (mg/dL)'];
  for (let day = 0; day < days; day++)
    for (let minute = 0; minute < hours * 60; minute += step) {
      if (noNights && (minute < 420 || minute >= 1380)) continue;
      readings.push(`${at(day, minute)},${level(day, minute, stress)}`);
    }
  for (let row = 0; row < faulty; row++) readings.push(`${at(row % days, 300 + row)},not a number`);
  const notes = ['Time,Food,Carbohydrate (g),Rapid insulin (IU),Exercise,Exercise (min),Alarm,Note'];
  for (let day = 0; day < days; day++) {
    notes.push(`${at(day, 475)},${named('porridge', letters)},45,4,,,,`);
    notes.push(`${at(day, 1100)},${named('pasta', letters)},70,6,,,,`);
    for (let minute = 0; smallDoses && minute < 1440; minute += 60)
      notes.push(`${at(day, minute)},,,0.${1 + (minute % 9)},,,,`);
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
    const rows = ['Time,Basal rate (IU/h)'];
    for (let i = 0; i < days * 48; i++) rows.push(`${at(0, i * 30)},${(0.4 + (i % 9) / 20).toFixed(2)}`);
    inputs.push(file('rates.csv', rows));
  }
  if (wrist) {
    const rows = ['Time,Exercise,Exercise (min)'];
    for (let day = 0; day < days; day++)
      for (let minute = 420; minute < 1320; minute += 15)
        rows.push(`${at(day, minute)},${minute >= 1080 && minute < 1125 ? 'RUNNING,15' : 'WALKING,3'}`);
    inputs.push(file('wrist.csv', rows));
  }
  const last = at(days - 1, 0).slice(0, 10);
  const result = analyse(
    inputs,
    {
      targets: 'adult',
      today: last,
      unit: 'mg/dL',
      logWords: logWords(),
      period: { days: stress.compared ? days / 2 : days },
      ...(stress.compared ? { compare: { with: 'previous' } } : {}),
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
