import type { Agreed } from '../../model/visits.ts';
import type { Read } from '../messages.ts';
import { say } from '../say.ts';
import type { State } from '../state/state.ts';
import { draftOf, type TypedField, unsaved, whoseWords } from '../state/typed.ts';
import { button, choice, el, newId } from './make.ts';

export interface Visiting {
  /** While somebody types: kept at once, shown on the paper when the field is left. */
  type(field: TypedField, text: string): void;
  shown(): void;
  /** `ruled`: it is what the rules give. */
  topic(id: string, ruled: boolean): void;
  /** What was worked out, in place of what somebody made of it. */
  draft(): void;
  undo(): void;
}

/** So many letters of each, as the visit file takes them. */
const MOST: Record<TypedField, number> = {
  ...{ goal: 300, step: 300, helper: 300, question: 300, remarks: 1000, interpretation: 3000, by: 80 },
  ...{ nextVisit: 10, sure: 2 },
};

/** The visit: what it is about, what was agreed, and whose words these are. Nothing that is typed here is worked with. */
export function visitView(state: State, read: Read, act: Visiting): Node[] {
  type Text = Exclude<keyof Agreed, 'sure' | 'on'>;
  const textOf = (name: Text): string => state.typed[name] ?? (name === 'interpretation' ? draftOf(state) : '');
  const field = (name: Text, lines = 0, type = 'text'): HTMLElement => {
    const id = newId(name);
    const shared = { id, 'data-field': name, autocomplete: 'off' };
    const input =
      lines > 0
        ? el('textarea', { ...shared, rows: lines, maxlength: MOST[name] })
        : el('input', { ...shared, type, ...(type === 'text' ? { maxlength: MOST[name] } : {}) });
    input.value = textOf(name);
    input.addEventListener('input', () => act.type(name, input.value));
    input.addEventListener('change', () => {
      act.shown();
      // As it is kept, without what a visit file does not take.
      input.value = textOf(name);
    });
    return el('div', { class: 'field' }, el('label', { for: id }, say(`visit.${name}`)), input);
  };
  const sure = choice(
    say('visit.sure'),
    [['', ''], ...Array.from({ length: 11 }, (_, n) => [String(n), String(n)] as const)],
    state.typed.sure === undefined ? '' : String(state.typed.sure),
    (value) => {
      act.type('sure', value);
      act.shown();
    },
  );
  sure.querySelector('select')?.setAttribute('data-field', 'sure');
  return [
    el('p', {}, say('visit.help')),
    topics(read, act),
    el(
      'fieldset',
      {},
      el('legend', {}, say('visit.agreed')),
      ...[
        field('goal', 2),
        field('step', 2),
        field('helper'),
        field('nextVisit', 0, 'date'),
        sure,
        field('question', 2),
      ],
    ),
    el(
      'fieldset',
      {},
      el('legend', {}, say('visit.team')),
      draftPart(state, act, field('interpretation', 10)),
      field('remarks', 3),
    ),
    field('by'),
    el('p', { id: 'written' }, writtenText(state)),
    el(
      'div',
      { class: 'roads' },
      button(say('visit.undo'), act.undo, { 'data-field': 'undo', disabled: state.undo.length === 0 }),
      el('p', { id: 'kept', role: 'status' }, keptText(state)),
    ),
  ];
}

/** Whether a file holds all that was typed. */
const keptText = (state: State): string =>
  Object.keys(state.typed).length === 0 ? '' : say(unsaved(state, whoseWords(state)) ? 'visit.unsaved' : 'visit.saved');

const writtenText = ({ typed: { on } }: State): string => (on === undefined ? '' : say('visit.on', { date: on }));

const isEdited = ({ typed }: State): boolean => typed.interpretation !== undefined;
const hasMoved = (state: State): boolean =>
  isEdited(state) && state.draftThen !== '' && state.draftThen !== draftOf(state);

/** Says anew what follows from the words, without touching the fields. */
export function markKept(state: State): void {
  const kept = document.getElementById('kept');
  if (!kept) return;
  kept.textContent = keptText(state);
  document.getElementById('written')!.textContent = writtenText(state);
  document.querySelector<HTMLButtonElement>('[data-field=undo]')!.disabled = state.undo.length === 0;
  document.getElementById('moved')!.hidden = !hasMoved(state);
  document.querySelector<HTMLButtonElement>('[data-field=draft]')!.hidden = !isEdited(state);
}

/** Topics that were found, each with what it rests on; the rules' own first. */
function topics({ topics: found }: Read, act: Visiting): HTMLElement {
  const name = newId('topic');
  const one = ({ id, name: text, why, led, ruled }: Read['topics'][number]): HTMLElement =>
    el(
      'label',
      { class: 'reading' },
      el('input', {
        type: 'radio',
        name,
        value: id,
        checked: led,
        'data-field': `topic-${id}`,
        onchange: () => act.topic(id, ruled),
      }),
      el('span', {}, el('strong', {}, text), ruled && ` (${say('visit.ruled')})`, el('span', { class: 'shows' }, why)),
    );
  return el(
    'fieldset',
    { class: 'topics' },
    el('legend', {}, say('visit.topic')),
    ...(found.length > 0 ? found.map(one) : [el('p', {}, say('visit.noTopic'))]),
  );
}

/** The draft to edit, what was worked out staying in reach: an edited one does not follow the numbers. */
const draftPart = (state: State, act: Visiting, area: HTMLElement): HTMLElement =>
  el(
    'div',
    {},
    area,
    el('p', { class: 'shows' }, say('visit.draftHelp')),
    el('p', { id: 'moved', class: 'grave', hidden: !hasMoved(state) }, say('visit.draftMoved')),
    button(say('visit.draftBack'), act.draft, { 'data-field': 'draft', hidden: !isEdited(state) }),
  );
