import { EARLIER } from '../earlier.ts';
import { say } from '../say.ts';
import { type Picked, pastedTable } from '../state/dropped.ts';
import type { State, Way } from '../state/state.ts';
import { fileButton, hasFolders } from './files.ts';
import { button, el, newId } from './make.ts';

export interface Bringing {
  take(files: Picked[], more: boolean): void;
  example(): void;
  way(way: Way): void;
  again(): void;
}

/** How files come in: two ways to begin, and four roads, of which each engine has at least three. */
export function bringView(state: State, act: Bringing): Node[] {
  if (state.picked.length > 0) return [takenBar(state, act)];
  const roads = [
    fileButton(say('bring.files'), false, (files) => act.take(files, false)),
    ...(hasFolders() ? [fileButton(say('bring.folder'), true, (files) => act.take(files, false))] : []),
  ];
  return [
    el('p', { class: 'lead' }, say('bring.what')),
    wayChoice(state, act),
    el(
      'section',
      { class: 'drop', 'aria-labelledby': 'drop-title' },
      el('h2', { id: 'drop-title' }, say('bring.title')),
      el('p', {}, say('bring.kinds')),
      el('div', { class: 'roads' }, ...roads, button(say('bring.example'), act.example)),
      pasting(act.take),
    ),
  ];
}

function takenBar({ picked, invented }: State, act: Bringing): HTMLElement {
  const own = picked.filter(({ path }) => !path.startsWith(EARLIER));
  const names = [...new Set(own.map(({ path }) => path.split('/')[0]!))];
  const shown = names.length > 4 ? `${names.slice(0, 4).join(', ')} …` : names.join(', ');
  return el(
    'section',
    { class: 'taken', 'aria-label': say('bring.here') },
    // The one place of the screen that says so; each side of the papers is marked in its head.
    invented ? el('p', { class: 'grave' }, say('bring.invented')) : el('p', {}, say('bring.taken', { names: shown })),
    el(
      'div',
      { class: 'roads' },
      invented ? null : fileButton(say('bring.more'), false, (files) => act.take(files, true)),
      button(say('bring.again'), act.again),
    ),
  );
}

function wayChoice(state: State, act: Bringing): HTMLElement {
  const one = (way: Way): HTMLElement => {
    const input = el('input', {
      type: 'radio',
      name: 'way',
      value: way,
      checked: state.way === way,
      onchange: () => act.way(way),
    });
    return el(
      'label',
      { class: 'way' },
      input,
      el('span', {}, el('strong', {}, say(`ways.${way}.name`)), ' ', say(`ways.${way}.what`)),
    );
  };
  return el('fieldset', { class: 'ways' }, el('legend', {}, say('ways.legend')), one('own'), one('visit'));
}

/** A table that was copied elsewhere: it becomes a file of its own. */
function pasting(take: Bringing['take']): HTMLElement {
  const id = newId('pasted');
  const area = el('textarea', { id, rows: 6, spellcheck: false, autocomplete: 'off' });
  const read = button(say('paste.read'), () => {
    if (area.value.trim() === '') return area.focus();
    take([pastedTable(area.value)], false);
  });
  return el(
    'details',
    {},
    el('summary', {}, say('paste.title')),
    el('label', { for: id }, say('paste.label')),
    area,
    read,
  );
}
