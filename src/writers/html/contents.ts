import type { Page } from '../../model/report.ts';
import { el, type Html } from './element.ts';
import type { Setting } from './setting.ts';

/** So few pages are found by scrolling. */
const FEW = 2;

/** Links to the pages, where there are more than a few. */
export function contents(pages: readonly Page[], ids: readonly string[], say: Setting['say']): Html[] {
  if (pages.length <= FEW) return [];
  const links = pages.map((page, i) => el('li', {}, el('a', { href: `#${ids[i]}` }, page.title)));
  return [el('nav', { class: 'contents', 'aria-label': say('web.contents') }, el('ul', {}, ...links))];
}
