import type { Timeline } from '../../model/timeline.ts';
import { MINUTE_MS, midnightOf } from '../../time/calendar.ts';
import { offsetText } from '../../time/offset.ts';
import { TZ_CODE } from './codes.ts';

/** `2026-03-29T02:15:00+02:00`: the wearer's clock, and how far it is from UTC. */
export function localTime({ days }: Timeline, at: number, day: number, minute: number): string {
  const seconds = Math.floor(at / 1000) % 60;
  const wall = midnightOf(days[day]!.date) + minute * MINUTE_MS + ((seconds + 60) % 60) * 1000;
  const offset = Math.round((wall - at) / MINUTE_MS) * MINUTE_MS;
  const clock = new Date(wall).toISOString().slice(0, 19);
  return `${clock}${offsetText(offset)}`;
}

/** A time, and the name of its zone where it is known. */
export const effective = ({ zone }: Timeline, time: string): Record<string, unknown> => ({
  effectiveDateTime: time,
  ...(zone === null ? {} : { _effectiveDateTime: { extension: [{ url: TZ_CODE, valueCode: zone }] } }),
});
