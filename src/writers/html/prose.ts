import type { BlockOf } from '../../model/report.ts';
import { el, type Html } from './element.ts';
import type { Setting } from './setting.ts';

export function heading(block: BlockOf<'heading'>, setting: Setting): Html {
  setting.topic = block.text;
  return el(`h${setting.depth(block.level)}`, { class: `head-${block.level}` }, block.text);
}

export const paragraph = (block: BlockOf<'paragraph'>): Html => el('p', { class: block.style }, block.text);

export const list = (block: BlockOf<'list'>): Html =>
  el(
    block.ordered ? 'ol' : 'ul',
    block.dense ? { class: block.pairs ? 'small pairs' : 'small' } : {},
    ...block.items.map((item) => el('li', {}, item)),
  );

export const caution = (block: BlockOf<'caution'>): Html =>
  el('p', { class: block.boxed ? 'caution boxed' : 'caution', role: 'note' }, block.text);
