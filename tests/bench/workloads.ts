/** Made-up readings for measuring speed: a day with meals in it and noise, the same every time. */
export interface Workload {
  name: string;
  days: number;
  /** Minutes between readings. */
  step: number;
  repeats: number;
}

export const workloads: Workload[] = [
  { name: '14 days, every 3 min', days: 14, step: 3, repeats: 120 },
  { name: '90 days, every 5 min', days: 90, step: 5, repeats: 40 },
  { name: '365 days, every 1 min', days: 365, step: 1, repeats: 6 },
];

const START = Date.UTC(2026, 0, 1);
const DAY = 1440;

/** Noise from -1 to 1, a linear congruential step (Numerical Recipes' constants, from memory). */
function noise(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 31 - 1;
  };
}

/** A text file of readings, and one of notes: four meals with insulin a day. */
export function makeInputs({ days, step }: Workload): { name: string; bytes: Uint8Array }[] {
  const readings = ['Time,Sensor glucose (mg/dL)'];
  const next = noise(7);
  let drift = 0;
  for (let minute = 0; minute < days * DAY; minute += step) {
    const clock = minute % DAY;
    drift = drift * 0.985 + next() * 2.2;
    const meals = [450, 750, 1130].reduce((sum, meal) => sum + bump(clock - meal), 0);
    const value = Math.min(400, Math.max(45, Math.round(118 + 55 * meals + drift * 2)));
    readings.push(`${stamp(minute)},${value}`);
  }
  const notes = ['Time,Carbohydrate (g),Rapid insulin (IU),Note'];
  for (let day = 0; day < days; day++) {
    for (const meal of [445, 745, 960, 1125]) {
      const grams = Math.round(45 + next() * 20);
      notes.push(`${stamp(day * DAY + meal)},${grams},${Math.round(grams / 10)},`);
    }
  }
  return [file('readings.csv', readings), file('logbook.csv', notes)];
}

const bump = (minutes: number): number => (minutes < 0 ? 0 : (minutes / 45) * Math.exp(1 - minutes / 45));
const stamp = (minute: number): string =>
  new Date(START + minute * 60_000).toISOString().slice(0, 16).replace('T', ' ');
const file = (name: string, lines: string[]) => ({ name, bytes: new TextEncoder().encode(`${lines.join('\n')}\n`) });
