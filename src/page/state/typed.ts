import type { LocalDate } from '../../model/glucose.ts';
import type { Agreed } from '../../model/visits.ts';
import type { State } from './state.ts';

/** What somebody can type in at a visit; the day is the page's. */
export type TypedField = Exclude<keyof Agreed, 'on'>;

const OF_LINES: readonly TypedField[] = ['remarks', 'interpretation'];
/** Signs that steer a line or its direction do their work wherever a text is pasted: the visit file takes none. */
const STEERING = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;

/** A text as the visit file takes it, empty where nothing is left of it. */
function plainTyped(field: TypedField, text: string): string {
  const lines = text.split(/\r\n|\r|\n/).map((line) => line.replace(/\t/g, ' ').replace(STEERING, '').trimEnd());
  return (OF_LINES.includes(field) ? lines.join('\n') : lines.join(' ')).trim();
}

/** The draft as a field holds it. */
export const draftOf = ({ read }: Pick<State, 'read'>): string =>
  plainTyped('interpretation', read?.draft.join('\n') ?? '');

/** Puts a text into a field, or takes it out, with the day of writing. Typing on in one field is one step to take back. */
export function type(state: State, field: TypedField, text: string, today: string): void {
  const plain = plainTyped(field, text);
  const draft = draftOf(state);
  // The draft as it stands is nobody's words.
  const value = field === 'interpretation' && plain === draft ? '' : plain;
  if (state.typing !== field) remember(state);
  state.typing = field;
  const { [field]: before, on: _, ...rest } = state.typed;
  if (field === 'interpretation' && before === undefined) state.draftThen = draft;
  const next: Agreed = value === '' ? rest : { ...rest, [field]: field === 'sure' ? Number(value) : value };
  const words = Object.keys(next).some((name) => name !== 'by');
  state.typed = words ? { ...next, on: today as LocalDate } : next;
}

/** Notes what holds, so that it can be had again. */
export function remember(state: State): void {
  state.undo.push({ typed: state.typed, topic: state.asked.topic });
}

/** Takes the last step back. Whether there was one. */
export function undo(state: State): boolean {
  const last = state.undo.pop();
  if (!last) return false;
  state.typed = last.typed;
  state.typing = '';
  if (last.topic === undefined) delete state.asked.topic;
  else state.asked.topic = last.topic;
  return true;
}

/** Whose words these are: by what somebody's results are called, or the one person's, whatever their files are called. */
export const whoseWords = ({ person, ofMany }: Pick<State, 'person' | 'ofMany'>): string =>
  ofMany && person ? person.stem : '';

/** Whether words that were typed for somebody are in no saved file; absent: for anyone. */
export const unsaved = ({ kept, saved }: Pick<State, 'kept' | 'saved'>, who?: string): boolean =>
  [...kept].some(
    ([one, typed]) => (who === undefined || one === who) && Object.keys(typed).length > 0 && saved.get(one) !== typed,
  );
