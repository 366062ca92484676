import { MINUTE_MS } from './calendar.ts';

/** Marks a wall clock that was written without an offset from UTC. */
export const NO_OFFSET = -32768;

/** `+02:00` for an offset in milliseconds. */
export function offsetText(offset: number): string {
  const minutes = Math.abs(offset) / MINUTE_MS;
  const two = (value: number) => String(value).padStart(2, '0');
  return `${offset < 0 ? '-' : '+'}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}
