import type { Sheet, Showing } from '../messages.ts';
import type { Screen } from './screen.ts';
import type { State } from './state.ts';
import type { Worker } from './worker.ts';

interface Around {
  begun(): Worker;
  faces: readonly FontFace[];
  fail(error: unknown): void;
}

/**
 * Shows a paper of what was read last; of the report with its sheet of remarks, without it, or that alone. What comes back after another
 * paper was wanted, or something else was read, is not shown.
 */
export function openShowing(state: State, screen: Screen, { begun, faces, fail }: Around) {
  let asks = 0;
  return async (sheet: Sheet, remarks: Showing['remarks'] = 'with'): Promise<void> => {
    const { read } = state;
    state.sheet = sheet;
    asks += 1;
    const mine = asks;
    screen.coming(true);
    try {
      const paper = await begun().ask('show', { sheet, remarks, typed: state.typed });
      if (mine !== asks || read !== state.read) return;
      screen.drawFaces(paper.lacking, '');
      await screen.paper(sheet, paper, faces);
    } catch (error) {
      fail(error);
    } finally {
      if (mine === asks) screen.coming(false);
    }
  };
}
