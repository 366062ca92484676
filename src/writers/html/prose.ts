import type { Block } from '../../model/report.ts';
import { el, type Html } from './element.ts';
import type { Setting } from './setting.ts';

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
