import type { Block } from '../../model/report.ts';
import { el, type Html } from './element.ts';
import type { Setting } from './setting.ts';
import { swatch } from './swatch.ts';

type Of<K extends Block['kind']> = Extract<Block, { kind: K }>;

export function heading(block: Of<'heading'>, setting: Setting): Html {
  setting.topic = block.text;
  return el(`h${setting.depth(block.level)}`, { class: `head-${block.level}` }, block.text);
}

export const paragraph = (block: Of<'paragraph'>): Html => el('p', { class: block.style }, block.text);

export const list = (block: Of<'list'>): Html =>
  el(block.ordered ? 'ol' : 'ul', {}, ...block.items.map((item) => el('li', {}, item)));

export const caution = (block: Of<'caution'>): Html =>
  el('p', { class: block.boxed ? 'caution boxed' : 'caution', role: 'note' }, block.text);

/** Name, value, remark: read in that order, shown with the value first. */
export const figures = (block: Of<'figures'>, setting: Setting): Html =>
  el(
    'dl',
    { class: 'figures' },
    ...block.items.map(({ value, label, note, band }) =>
      el(
        'div',
        {},
        el('dt', {}, ...(band ? [swatch(band, setting)] : []), label),
        el('dd', { class: 'value' }, value),
        ...(note === '' ? [] : [el('dd', {}, note)]),
      ),
    ),
  );
