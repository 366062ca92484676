import type { Issue } from '../model/input.ts';
import type { Timeline } from '../model/timeline.ts';
import type { Teller } from '../papers/teller.ts';
import { WrongUse } from './exits.ts';
import type { Gathered } from './gather.ts';
import type { Wanted } from './settings.ts';
import { issueLines } from './tell.ts';

/** What the commands are given by the one file that knows the world. */
export interface Door {
  tell: Teller;
  /** Parsed words file of the language. */
  words: unknown;
  /** YYYY-MM-DD on the wall clock of this machine. */
  today: string;
  /** The day, and HH:MM, on that clock as it stands when asked; a run that goes on asks again. */
  day(): string;
  time(): string;
  version: string;
  /** To the standard output, one line. */
  print(line: string): void;
  /** To the standard error, one line. */
  complain(line: string): void;
}

/** Says what is wrong in a settings file. */
export function refuseSettings({ tell, complain }: Door, issues: readonly Issue[]): never {
  for (const line of issueLines(tell, issues)) complain(line);
  throw new WrongUse('wrongSettings');
}

/** What was not opened, and which settings came from a file. */
export function tellSources({ tell, print }: Door, found: Gathered, wanted: Wanted): void {
  if (found.passedOver.length > 0) print(tell.say('cli.told.passedOver', { names: found.passedOver.join(', ') }));
  if (found.settingsPath !== undefined && wanted.fromFile.length > 0) {
    print(tell.say('cli.told.settingsFile', { path: found.settingsPath, names: wanted.fromFile.join(', ') }));
  }
  if (wanted.overruled.length > 0) print(tell.say('cli.told.overruled', { names: wanted.overruled.join(', ') }));
}

export function tellPeriod({ tell, print }: Door, timeline: Timeline): void {
  const date = (value: Timeline['from']): string => tell.speaker.value({ q: 'date', value }, 'full');
  print(
    tell.say(`cli.told.period.${timeline.chosenBy}`, {
      days: timeline.days.length,
      from: date(timeline.from),
      to: date(timeline.to),
    }),
  );
}
