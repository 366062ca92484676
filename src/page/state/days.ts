import type { Screen } from './screen.ts';
import type { State } from './state.ts';
import type { Worker } from './worker.ts';

interface Around {
  begun(): Worker;
  faces: readonly FontFace[];
  fail(error: unknown): void;
}

/** The single days of whoever is looked at. What comes back after something else was read is of nobody any more. */
export function openDays(state: State, screen: Screen, { begun, faces, fail }: Around) {
  let asks = 0;
  return {
    /** Counts all days after the papers are there, as it reads the files once more: no period changes what they hold. */
    async count(): Promise<void> {
      const { read } = state;
      try {
        const days = await begun().ask('days', {});
        if (read !== state.read) return;
        state.days = days;
        screen.drawStrip();
      } catch (error) {
        fail(error);
      }
    },
    /** Opens a day large: of several that are asked for, the last. */
    async show(date: string): Promise<void> {
      const { read } = state;
      asks += 1;
      const mine = asks;
      try {
        const day = await begun().ask('day', { date, sheet: state.sheet });
        if (day && mine === asks && read === state.read) await screen.day(day, faces);
      } catch (error) {
        fail(error);
      }
    },
  };
}
