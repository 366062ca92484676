import type { Listed, Row } from '../folderMessages.ts';
import { say } from '../say.ts';
import { button, el, newId } from './make.ts';

/** Everyone, to be found and opened. `show` leaves the elements of lines that stay, so that the focus is never taken. */
export interface Lines {
  nodes: Node[];
  show(listed: Listed): void;
}

export function linesOf(open: (stem: string) => void): Lines {
  const body = el('tbody', {});
  const head = el('tr', {});
  const there = new Map<string, { row: HTMLElement; of: string }>();
  const line = el('tr', { class: 'line' });
  const found = finder();
  let rows: readonly Row[] = [];
  const find = (): void => {
    const fits = rows.filter((row) => found.fits(row));
    for (const row of rows) there.get(row.stem)!.row.hidden = !fits.includes(row);
    line.hidden = fits.length < rows.length;
    found.count(fits.length, rows.length);
  };
  found.changed(find);

  function show(listed: Listed): void {
    const { visits } = listed;
    rows = listed.rows;
    line.remove();
    const titles = ['code', 'why', 'group', 'hours', ...(visits ? (['visit'] as const) : [])] as const;
    head.replaceChildren(...titles.map((name) => el('th', { scope: 'col' }, say(`folder.${name}`))));
    const stems = new Set(rows.map(({ stem }) => stem));
    for (const [stem, { row }] of there) {
      if (stems.has(stem)) continue;
      row.remove();
      there.delete(stem);
    }
    let at = body.firstElementChild;
    for (const one of rows) {
      const of = JSON.stringify([one, visits]);
      let known = there.get(one.stem);
      if (known?.of !== of) {
        if (known && known.row === at) at = at.nextElementSibling;
        known?.row.remove();
        known = { row: rowView(one, visits, open), of };
        there.set(one.stem, known);
      }
      if (known.row === at) at = at.nextElementSibling;
      else body.insertBefore(known.row, at);
    }
    if (listed.line) {
      line.replaceChildren(el('td', { colspan: titles.length }, listed.line.text));
      body.insertBefore(line, body.children[listed.line.first] ?? null);
    }
    found.groups(listed.groups.map(([name]) => name));
    find();
  }

  const label = say('folder.list');
  const table = el(
    'div',
    { class: 'scroll', tabindex: 0, role: 'region', 'aria-label': label },
    el('table', { class: 'worklist' }, el('caption', { class: 'unseen' }, label), el('thead', {}, head), body),
  );
  return { nodes: [found.view, table], show };
}

function rowView(row: Row, visits: boolean, open: (stem: string) => void): HTMLElement {
  const label = say('folder.open', { code: row.code });
  const code = row.opens ? button(row.code, () => open(row.stem), { class: 'plain', 'aria-label': label }) : row.code;
  return el(
    'tr',
    {},
    el('th', { scope: 'row' }, code),
    el(
      'td',
      {},
      el('strong', {}, row.topic),
      ...row.why.split('\n').map((text) => el('span', { class: 'shows' }, text)),
    ),
    el('td', {}, row.group),
    el('td', { class: 'number' }, row.hours),
    visits && el('td', {}, row.visit),
  );
}

/** Finds people by a part of their code and by their group. */
function finder() {
  const [code, group] = [newId('find'), newId('find')];
  const field = el('input', { id: code, type: 'text', autocomplete: 'off', spellcheck: false });
  const select = el('select', { id: group });
  const count = el('p', { role: 'status' });
  let names = '';
  return {
    view: el(
      'div',
      { class: 'find' },
      el('div', { class: 'field' }, el('label', { for: code }, say('folder.findCode')), field),
      el('div', { class: 'field' }, el('label', { for: group }, say('folder.group')), select),
      count,
    ),
    fits: (row: Row): boolean =>
      row.code.toLowerCase().includes(field.value.trim().toLowerCase()) &&
      (select.value === '' || row.group === select.value),
    changed(act: () => void): void {
      field.addEventListener('input', act);
      select.addEventListener('change', act);
    },
    groups(all: readonly string[]): void {
      if (names === all.join('\n')) return;
      names = all.join('\n');
      const { value } = select;
      const options = all.map((name) => el('option', { value: name, selected: name === value }, name));
      select.replaceChildren(el('option', { value: '' }, say('folder.anyGroup')), ...options);
    },
    count(n: number, of: number): void {
      count.textContent = n === of ? '' : say('folder.shown', { n: String(n), of: String(of) });
    },
  };
}
