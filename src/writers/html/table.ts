import type { BlockOf, Cell } from '../../model/report.ts';
import { drawingSvg } from '../svg.ts';
import { type Attributes, drawn, el, type Html } from './element.ts';
import { finder, isLong } from './finder.ts';
import { scroller, sideways } from './scroller.ts';
import type { Setting } from './setting.ts';
import { swatch } from './swatch.ts';

export function table(block: BlockOf<'table'>, setting: Setting): Html[] {
  const { columns, rows, caption, captionShown, dense, keys } = block;
  const end = (i: number): string | undefined => (columns[i]?.align === 'end' ? 'end' : undefined);
  const long = isLong(block);
  const sortable = keys !== undefined;
  const id = long ? setting.id('table') : undefined;
  const value = (row: number, column: number): string | undefined =>
    long ? block.find?.find((one) => one.column === column)?.values?.[row] : undefined;
  const whole = el(
    'table',
    {
      id,
      class: looks(
        dense && 'dense',
        wide(columns, sortable) && 'wide',
        close(columns, sortable) && 'close',
        rows.length <= SHORT && 'short',
        keys && 'sortable',
      ),
    },
    el('caption', { class: captionShown ? undefined : 'unseen' }, caption),
    el('colgroup', {}, ...columns.map(({ width }) => el('col', { class: setting.shares('column', [width]) }))),
    head(columns.map(({ title }, i) => el('th', { scope: 'col', class: end(i) }, title))),
    ...bodies(
      rows.map((row, r) =>
        row.map((cell, i) => {
          const more = {
            class: looks(end(i), cell.muted && 'muted'),
            'data-key': keys?.[r]?.[i],
            'data-find': value(r, i),
          };
          if (cell.across)
            return el(
              'td',
              { colspan: columns.length, class: looks('across', cell.muted && 'muted') },
              ...inside(cell, setting),
            );
          return cellHtml(cell.text, i, inside(cell, setting), more);
        }),
      ),
      long ? PIECE : rows.length,
    ),
  );
  return [
    ...(id === undefined ? [] : [finder(block, id, setting)]),
    scroller(caption, whole),
    ...(wide(columns, sortable) ? [sideways(setting)] : []),
  ];
}

const head = (cells: Html[]): Html => el('thead', {}, el('tr', {}, ...cells));

/** What a long table shows first; the rest is laid out only where no script turns its pages. */
const PIECE = 100;
const bodies = (rows: Html[][], first: number): Html[] =>
  rows.length <= first
    ? [body(rows)]
    : [
        body(rows.slice(0, first)),
        el('tbody', { class: 'rest' }, ...rows.slice(first).map((cells) => el('tr', {}, ...cells))),
      ];

const body = (rows: Html[][]): Html => el('tbody', {}, ...rows.map((cells) => el('tr', {}, ...cells)));

/** The first cell names its row, when it says anything. */
function cellHtml(text: string, column: number, content: Html[], more: Attributes = {}): Html {
  const names = column === 0 && text.trim() !== '';
  return el(names ? 'th' : 'td', { scope: names ? 'row' : undefined, ...more }, ...content);
}

/** So many rows are never split over two sheets. */
const SHORT = 14;

/** More columns than these slide sideways on a phone; up to so many are set closer there. */
const MOST_IN_SIGHT = 6;
const FEW = 3;
// Rows that can be sorted are lists of people, whose cells hold sentences.
const wide = (columns: readonly unknown[], sortable = false): boolean =>
  columns.length > (sortable ? FEW : MOST_IN_SIGHT);
const close = (columns: readonly unknown[], sortable = false): boolean =>
  columns.length > FEW && !wide(columns, sortable);

const looks = (...names: (string | false | undefined)[]): string | undefined =>
  names.filter(Boolean).join(' ') || undefined;

function inside(cell: Cell, setting: Setting): Html[] {
  const first = cell.first === undefined ? [] : [el('strong', { class: 'first' }, cell.first)];
  const plain = cell.strong ? el('strong', {}, cell.text) : cell.text;
  const lines = cell.text.split('\n');
  if (lines.length > 1 && cell.link === undefined && !cell.strong) {
    return [...first, ...lines.flatMap((line, i) => (i === 0 ? [line] : [el('br', {}), line]))];
  }
  const text = cell.link === undefined ? plain : el('a', { href: address(cell.link) }, plain);
  const shown = cell.picture
    ? [
        ...first,
        text,
        el(
          'span',
          { class: 'glance' },
          drawn(drawingSvg(cell.picture, { grey: setting.grey, id: setting.id('chart') })),
        ),
      ]
    : [...first, text];
  return cell.band ? [swatch(cell.band, setting), ...shown] : shown;
}

/** Never more than a path from here: whatever a name holds, it is no scheme, no way up and no query. */
const address = (path: string): string =>
  ['.', ...path.split('/').filter((step) => !/^\.*$/.test(step))].map(encodeURIComponent).join('/');

/** The numbers of a drawing. */
export const plainTable = (caption: string, { columns, rows }: { columns: string[]; rows: string[][] }): Html =>
  el(
    'table',
    { class: looks('dense', wide(columns) && 'wide', close(columns) && 'close') },
    el('caption', { class: 'unseen' }, caption),
    head(columns.map((title) => el('th', { scope: 'col' }, title))),
    body(rows.map((row) => row.map((cell, i) => cellHtml(cell, i, [cell])))),
  );
