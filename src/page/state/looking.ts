import { EARLIER } from '../earlier.ts';
import type { Picked } from './dropped.ts';
import type { Looked } from './reader.ts';
import type { Screen } from './screen.ts';
import type { State } from './state.ts';

interface Around {
  looked(): Promise<Looked>;
  forget(): void;
  fail(error: unknown): void;
  listAgain(): void;
}

/** Who lies there, looked at again. */
export function openLooking(state: State, screen: Screen, { looked, forget, fail, listAgain }: Around) {
  /** In another language, or with more beside them. */
  async function again(): Promise<void> {
    forget();
    try {
      await looked();
    } catch (error) {
      return fail(error);
    }
    listAgain();
    screen.draw();
  }

  return {
    again,
    /** Visit files of earlier visits, or a folder that holds some, beside all that was brought. */
    async earlier(files: readonly Picked[]): Promise<void> {
      state.picked = [...state.picked, ...files.map((one) => ({ ...one, path: EARLIER + one.path }))];
      await again();
    },
    compare(on: boolean): void {
      state.since = on;
    },
  };
}
