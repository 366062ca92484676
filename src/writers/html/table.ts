import type { Block, Cell } from '../../model/report.ts';
import { el, type Html } from './element.ts';
import type { Setting } from './setting.ts';
import { swatch } from './swatch.ts';

type Table = Extract<Block, { kind: 'table' }>;

export function table(block: Table, setting: Setting): Html {
  const { columns, rows, caption, captionShown, dense } = block;
  const end = (i: number): string | undefined => (columns[i]?.align === 'end' ? 'end' : undefined);
  const whole = el(
    'table',
    { class: looks(dense && 'dense', columns.length > 3 && 'wide', rows.length <= SHORT && 'short') },
    el('caption', { class: captionShown ? undefined : 'unseen' }, caption),
    el('colgroup', {}, ...columns.map(({ width }) => el('col', { class: setting.shares('column', [width]) }))),
    el('thead', {}, el('tr', {}, ...columns.map(({ title }, i) => el('th', { scope: 'col', class: end(i) }, title)))),
    el(
      'tbody',
      {},
      ...rows.map((row) =>
        el(
          'tr',
          {},
          ...row.map((cell, i) =>
            el(
              i === 0 ? 'th' : 'td',
              { scope: i === 0 ? 'row' : undefined, class: looks(end(i), cell.muted && 'muted') },
              ...inside(cell, setting),
            ),
          ),
        ),
      ),
    ),
  );
  return scroller(caption, whole);
}

/** What may be wider than a phone: it scrolls by itself, by finger or by keyboard, and the page does not. */
export const scroller = (label: string, ...inner: readonly Html[]): Html =>
  el('div', { class: 'scroll', role: 'group', 'aria-label': label, tabindex: 0 }, ...inner);

/** So many rows are never split over two sheets. */
const SHORT = 14;

const looks = (...names: (string | false | undefined)[]): string | undefined =>
  names.filter(Boolean).join(' ') || undefined;

function inside(cell: Cell, setting: Setting): Html[] {
  const text = cell.strong ? el('strong', {}, cell.text) : cell.text;
  return cell.band ? [swatch(cell.band, setting), text] : [text];
}

/** The numbers of a drawing. */
export const plainTable = (caption: string, { columns, rows }: { columns: string[]; rows: string[][] }): Html =>
  el(
    'table',
    { class: columns.length > 3 ? 'dense wide' : 'dense' },
    el('caption', { class: 'unseen' }, caption),
    el('thead', {}, el('tr', {}, ...columns.map((title) => el('th', { scope: 'col' }, title)))),
    el(
      'tbody',
      {},
      ...rows.map((row) =>
        el('tr', {}, ...row.map((cell, i) => (i === 0 ? el('th', { scope: 'row' }, cell) : el('td', {}, cell)))),
      ),
    ),
  );
