import type { LocalDate } from '../model/glucose.ts';
import type { Style } from './locale.ts';
import type { Speaker } from './speaker.ts';

const STYLES: readonly Style[] = ['short', 'long', 'full', 'dated', 'brief', 'plain', 'compact'];

/** Every way in which papers name these days, each with its day; none that could be two of them. */
export function dayNames(speaker: Pick<Speaker, 'value'>, dates: readonly LocalDate[]): Map<string, LocalDate> {
  const names = new Map<string, LocalDate | null>();
  for (const date of dates) {
    const say = (style: Style): string => speaker.value({ q: 'date', value: date }, style);
    for (const name of [...STYLES.map(say), `${say('weekday')} ${say('compact')}`])
      names.set(name, names.has(name) && names.get(name) !== date ? null : date);
  }
  return new Map([...names].filter((one): one is [string, LocalDate] => one[1] !== null));
}
