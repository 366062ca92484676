import { say } from '../say.ts';
import type { Run } from '../state/state.ts';
import { choice, el, newId } from './make.ts';

export interface Ordering {
  order(order: Run['order']): void;
  places(places: number | null): void;
  thresholds(file: { name: string; text: string }): void;
}

/** By what people are put in order, and where the day is full. */
export function orderingView(run: Run, act: Ordering): HTMLElement {
  const id = newId('thresholds');
  const input = el('input', {
    ...{ type: 'file', id, accept: '.json', class: 'unseen' },
    onchange: () => {
      const [file] = input.files ?? [];
      if (file) void file.text().then((text) => act.thresholds({ name: file.name, text }));
    },
  });
  const orders = [
    ['pressing', say('folder.pressing')],
    ['visit', say('folder.byVisit')],
  ] as const;
  return el(
    'details',
    {},
    el('summary', {}, say('folder.rules')),
    run.listed?.visits === true &&
      choice(say('folder.order'), orders, run.order, (value) => act.order(value === 'visit' ? 'visit' : 'pressing')),
    placesView(run, act),
    el('label', { class: 'button' }, input, say('folder.thresholds')),
    run.thresholds && el('p', {}, say('folder.inForce', { name: run.thresholds.name })),
  );
}

function placesView({ places }: Run, act: Ordering): HTMLElement {
  const id = newId('places');
  const input = el('input', {
    ...{ type: 'number', id, min: 1, max: 100_000, step: 1, value: places ?? '', 'data-do': 'places' },
    onchange: () => {
      if (input.checkValidity()) act.places(input.value === '' ? null : Number(input.value));
    },
  });
  return el('div', { class: 'field' }, el('label', { for: id }, say('folder.places')), input);
}
