import { expect, test } from 'vitest';
import { withDayLinks } from '../../src/writers/html/dayLinks.ts';
import { drawn, el, type Html, print } from '../../src/writers/html/element.ts';

const DAYS = new Map([
  ['Jun 4', '2026-06-04'],
  ['June 4', '2026-06-04'],
  ['June 4, 2026', '2026-06-04'],
  ['Jun 14', '2026-06-14'],
  ['4 de junio', '2026-06-04'],
  ['14 de junio', '2026-06-14'],
]);
const shown = (piece: Html): string => withDayLinks([piece], DAYS).map(print).join('').trim();
const link = (text: string, date = '2026-06-04') =>
  `<a class="day" role="button" tabindex="0" data-day="${date}">${text}</a>`;

test.each([
  ['a date in a sentence', 'Low on Jun 4, at noon.', `Low on ${link('Jun 4')}, at noon.`],
  ['a date in which no line ends', 'Jun\u00a04', link('Jun\u00a04')],
  ['the longest name', 'June 4, 2026 was', `${link('June 4, 2026')} was`],
  ['two dates', 'Jun 4, Jun 14', `${link('Jun 4')}, ${link('Jun 14', '2026-06-14')}`],
  ['no part of another day', 'Jun 41 and 114 de junio', 'Jun 41 and 114 de junio'],
  ['the whole of another day', '14 de junio', link('14 de junio', '2026-06-14')],
  ['no day of another year', 'June 4, 2025 and 4 de junio de 2025', 'June 4, 2025 and 4 de junio de 2025'],
  ['text that is none', 'June bug 4 <b>', 'June bug 4 &lt;b&gt;'],
])('%s', (_, text, expected) => {
  expect(shown(el('p', {}, text))).toBe(`<p>${expected}</p>`);
});

test('what can be pressed already stays as it is, and so does a drawing', () => {
  for (const tag of ['a', 'button', 'summary', 'label']) expect(shown(el(tag, {}, 'Jun 4'))).not.toContain('data-day');
  expect(shown(drawn('<svg>Jun 4</svg>'))).toBe('<svg>Jun 4</svg>');
  expect(shown(el('table', {}, el('tr', {}, el('td', {}, 'Jun 4'))))).toContain(link('Jun 4'));
});

test('where no day can be shown nothing changes', () => {
  expect(withDayLinks([el('p', {}, 'Jun 4')], new Map())).toEqual([el('p', {}, 'Jun 4')]);
});
