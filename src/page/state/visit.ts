import { say } from '../say.ts';
import { today } from './day.ts';
import type { State } from './state.ts';
import { remember, type TypedField, type, undo, unsaved, whoseWords } from './typed.ts';

export interface Around {
  /** Reads again with what holds now; the old view stays until then. */
  read(): void;
  /** Shows the paper again: nothing that is worked out changed. */
  show(): void;
  /** The fields of the visit anew, with the focus where it was. */
  drawVisit(): void;
  /** What says whether a file holds all that was typed. */
  drawKept(): void;
}

/** What can be done about a visit: choosing, typing, taking back. The words stay when a worker ends, and with each person of a folder. */
export function openVisit(state: State, { read, show, drawVisit, drawKept }: Around) {
  const keep = (): void => void state.kept.set(whoseWords(state), state.typed);
  return {
    type(field: TypedField, text: string): void {
      type(state, field, text, today());
      keep();
      drawKept();
    },
    /** A field was left. Its neighbours stay the elements they are: somebody is on the way into one of them. */
    shown(): void {
      state.typing = '';
      drawKept();
      show();
    },
    /** Back to the draft as it is worked out. */
    draft(): void {
      type(state, 'interpretation', '', today());
      state.typing = '';
      keep();
      drawVisit();
      show();
    },
    /** `ruled`: what the rules give, which is no choice unless settings beside the files made another. */
    topic(id: string, ruled: boolean): void {
      remember(state);
      const own = state.asked.topic !== undefined && state.asked.topic === state.read?.holds.topic;
      if (ruled && own) delete state.asked.topic;
      else state.asked.topic = id;
      read();
    },
    undo(): void {
      const { topic } = state.asked;
      if (!undo(state)) return;
      keep();
      drawVisit();
      if (topic === state.asked.topic) show();
      else read();
    },
    /** What was typed for whoever is opened is there again. */
    opened(): void {
      Object.assign(state, { typed: state.kept.get(whoseWords(state)) ?? {}, undo: [], typing: '', draftThen: '' });
    },
    /** Words that a file brought stand in the fields until somebody types. */
    brought(): void {
      const { read, kept } = state;
      if (!read?.written || kept.has(whoseWords(state))) return;
      state.typed = read.written;
      keep();
      state.saved.set(whoseWords(state), read.written);
    },
    /** To be called once a file holds what is typed now, whatever is typed meanwhile. */
    saving(): () => void {
      const { typed } = state;
      const who = whoseWords(state);
      return () => {
        state.saved.set(who, typed);
        drawKept();
      };
    },
    /** Whether words that no file holds may go. */
    mayGo: (): boolean => !unsaved(state) || confirm(say('visit.leave')),
  };
}
