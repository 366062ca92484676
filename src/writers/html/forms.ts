import type { BlockOf } from '../../model/report.ts';
import { el, type Html } from './element.ts';
import type { Setting } from './setting.ts';

/** Boxes to tick with a pen or with a key. Nothing ticked is kept or sent. */
export const boxes = (block: BlockOf<'boxes'>, { topic }: Setting): Html =>
  el(
    'div',
    { role: 'group', 'aria-label': topic },
    el(
      'ul',
      { class: block.inline ? 'boxes inline' : 'boxes' },
      ...block.items.map((item) =>
        el('li', {}, el('label', {}, el('input', { type: 'checkbox', autocomplete: 'off' }), el('span', {}, item))),
      ),
    ),
  );

/** Room for handwriting: the lines are for the eye, label and typed words are for everyone. */
export const writeIn = (block: BlockOf<'writeIn'>): Html =>
  el(
    'div',
    { class: block.inline && block.text === undefined ? 'write-in one-line' : 'write-in' },
    ...(block.label === undefined ? [] : [el('p', { class: 'label' }, block.label)]),
    ...(block.text === undefined ? [] : [el('p', { class: 'typed' }, block.text)]),
    ...Array.from({ length: block.lines }, () => el('div', { class: 'line' })),
  );
