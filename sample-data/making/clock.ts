/** Time in a story: minutes since its first midnight, and what the clock on the wall shows then. */
export interface Clock {
  days: number;
  /** Minutes since the beginning for a day and a wall minute; in a doubled hour the first pass. */
  at(day: number, minute: number): number;
  /** Wall clock in ms as if it were UTC. */
  wall(at: number): number;
  day(at: number): number;
  /** Minute of the local day, 0 to 1439. */
  minute(at: number): number;
}

/** `foldDay`: the day, counted from 0, on which the clocks go back from 04:00 to 03:00. */
export function clock(firstDay: string, days: number, foldDay?: number): Clock {
  const [year, month, date] = firstDay.split('-').map(Number) as [number, number, number];
  const start = Date.UTC(year, month - 1, date);
  const back = foldDay === undefined ? Number.POSITIVE_INFINITY : foldDay * 1440 + 240;
  const shown = (at: number): number => (at >= back ? at - 60 : at);
  return {
    days,
    at: (day, minute) => {
      const plain = day * 1440 + minute;
      return plain >= back ? plain + 60 : plain;
    },
    wall: (at) => start + shown(at) * 60_000,
    day: (at) => Math.floor(shown(at) / 1440),
    minute: (at) => ((shown(at) % 1440) + 1440) % 1440,
  };
}
