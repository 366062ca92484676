import type { BlockOf } from '../../model/report.ts';
import { el, type Html } from './element.ts';
import type { Setting } from './setting.ts';

/** Tables with more rows than this are shown in pieces. */
const LONG = 100;

/** Whether a table has so many rows that it needs to be looked through. */
export const isLong = ({ find, rows }: BlockOf<'table'>): boolean => find !== undefined && rows.length > LONG;

/** What finds rows of a long table and turns its pages. It needs the script, so it starts out hidden. */
export function finder({ find = [], columns, rows }: BlockOf<'table'>, table: string, { say, id }: Setting): Html {
  const name = (column: number): string => columns[column]!.title;
  const controls = find.map(({ column, values, order = [] }) => {
    const own = id('find');
    const attributes = { id: own, 'data-column': column, autocomplete: 'off' };
    const field =
      values === undefined
        ? el('input', { ...attributes, type: 'search' })
        : el(
            'select',
            attributes,
            el('option', { value: '' }, say('web.finder.any')),
            ...order
              .filter((value) => values.includes(value) && value !== '')
              .map((value) => el('option', { value }, value)),
          );
    return el('p', {}, el('label', { for: own }, name(column)), field);
  });
  const at = (param: string) => ({ q: 'word' as const, value: `@${param}` });
  const text = say('web.finder.shown', { from: at('from'), to: at('to'), of: at('of'), all: at('all') });
  return el(
    'div',
    { class: 'finder', 'data-table': table, hidden: true },
    el('fieldset', {}, el('legend', {}, say('web.finder.legend')), ...controls),
    el(
      'p',
      { class: 'turn' },
      el('button', { type: 'button' }, say('web.finder.back')),
      el(
        'span',
        { class: 'shown', role: 'status', 'data-text': text.replace(/[\u2066-\u2069]/g, '') },
        String(rows.length),
      ),
      el('button', { type: 'button' }, say('web.finder.next')),
    ),
  );
}
