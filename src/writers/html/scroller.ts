import { el, type Html } from './element.ts';
import type { Setting } from './setting.ts';

/** What may be wider than a phone: it scrolls by itself, by finger or by key, and the page does not. */
export const scroller = (label: string, ...inner: readonly Html[]): Html =>
  el('div', { class: 'scroll', role: 'group', 'aria-label': label, tabindex: 0 }, ...inner);

/** Says on a small screen that there is more to the side: a part out of sight must not be taken for the whole. */
export const sideways = ({ say }: Setting): Html =>
  el('p', { class: 'sideways', 'aria-hidden': 'true' }, say('web.sideways'));
