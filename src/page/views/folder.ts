import type { Extras, Row } from '../folderMessages.ts';
import type { Someone } from '../messages.ts';
import { writesFolders } from '../save/targets.ts';
import { say } from '../say.ts';
import type { Run, State } from '../state/state.ts';
import { button, choice, el, newId, tick } from './make.ts';

export interface Working {
  go(): void;
  stop(): void;
  open(person: Someone): void;
  save(into: 'zip' | 'folder'): void;
  saveList(name: string): void;
  order(order: Run['order']): void;
  thresholds(file: { name: string; text: string }): void;
}

/** What is made once for all, by the name of its file. */
const LISTS = [
  ['pdf', 'worklist.pdf'],
  ['html', 'worklist.html'],
  ['csv', 'worklist.csv'],
  ['measures', 'measures.csv'],
] as const;
const EXTRAS: readonly Extras[] = ['further', 'html', 'numbers', 'fhir'];

/** The worklist, while it grows and afterwards. `update` shows what moved and leaves all else where it is. */
export interface FolderView {
  nodes: Node[];
  update(run: Run): void;
}

export function folderView(state: State, run: Run, act: Working): FolderView {
  const { found } = state;
  const going = run.at !== 'no';
  const bar = el('progress', { max: 1, value: 0, 'aria-label': say('folder.list') });
  const far = el('p', { class: 'far' });
  const lead = el('p', {});
  const about = el('p', {});
  const groups = el('ul', { class: 'groups' });
  const wrong = el('p', { class: 'grave', hidden: true });
  const people = new Map((found?.people ?? []).map((person) => [person.stem, person]));
  const rows = rowsOf((stem) => act.open(people.get(stem)!));
  const passed = el('p', { hidden: true });
  const ending = run.saved || (run.stopped ? say('folder.stopped') : going ? '' : say('folder.done'));
  const progress = going
    ? [el('p', { role: 'status' }, say(run.at === 'saving' ? 'folder.saving' : 'folder.reading')), bar, far]
    : [el('p', { role: 'status' }, ending)];
  return {
    nodes: [
      el('h2', { tabindex: -1 }, say('folder.title')),
      el('p', {}, found?.toldBy ?? ''),
      el(
        'div',
        { class: 'progress' },
        ...progress,
        going
          ? button(say(run.at === 'saving' ? 'status.stop' : 'folder.stop'), act.stop)
          : run.stopped && button(say('folder.goOn'), act.go),
      ),
      wrong,
      lead,
      about,
      groups,
      ...(going ? [] : [ordering(run, act), savingAll(run, act)]),
      rows.table,
      passed,
    ],
    update({ listed }) {
      if (!listed) return;
      const { done, total } = listed.gone;
      bar.max = Math.max(total, 1);
      bar.value = done;
      far.textContent = listed.progress;
      lead.textContent = listed.lead;
      about.textContent = listed.about;
      wrong.hidden = listed.wrong === '';
      wrong.textContent = listed.wrong;
      groups.replaceChildren(...listed.groups.map(([name, n]) => el('li', {}, el('strong', {}, n), ` ${name}`)));
      passed.hidden = listed.passedOver.length === 0;
      passed.textContent = say('folder.passedOver', { names: listed.passedOver.join(', ') });
      rows.show(listed.rows, listed.visits);
    },
  };
}

/** A table whose lines stay the same elements while others come between them, so that the focus is never taken. */
function rowsOf(open: (stem: string) => void): {
  table: HTMLElement;
  show(rows: readonly Row[], visits: boolean): void;
} {
  const body = el('tbody', {});
  const head = el('tr', {});
  const there = new Map<string, { row: HTMLElement; of: string }>();
  const line = (row: Row, visits: boolean): HTMLElement => {
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
  };
  return {
    table: el(
      'div',
      { class: 'scroll', tabindex: 0, role: 'region', 'aria-label': say('folder.list') },
      el(
        'table',
        { class: 'worklist' },
        el('caption', { class: 'unseen' }, say('folder.list')),
        el('thead', {}, head),
        body,
      ),
    ),
    show(rows, visits) {
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
          known = { row: line(one, visits), of };
          there.set(one.stem, known);
        }
        if (known.row === at) at = at.nextElementSibling;
        else body.insertBefore(known.row, at);
      }
    },
  };
}

/** By what people are put in order. */
function ordering(run: Run, act: Working): HTMLElement {
  const id = newId('thresholds');
  const input = el('input', {
    ...{ type: 'file', id, accept: '.json', class: 'unseen' },
    onchange: () => {
      const [file] = input.files ?? [];
      if (file) void file.text().then((text) => act.thresholds({ name: file.name, text }));
    },
  });
  const orders = [
    ['pressing', say('folder.pressing')],
    ['visit', say('folder.byVisit')],
  ] as const;
  return el(
    'details',
    {},
    el('summary', {}, say('folder.rules')),
    run.listed?.visits === true &&
      choice(say('folder.order'), orders, run.order, (value) => act.order(value === 'visit' ? 'visit' : 'pressing')),
    el('label', { class: 'button' }, input, say('folder.thresholds')),
    run.thresholds && el('p', {}, say('folder.inForce', { name: run.thresholds.name })),
  );
}

function savingAll(run: Run, act: Working): HTMLElement {
  const extra = (name: Extras): HTMLElement =>
    tick(say(`folder.extras.${name}`), run.extras.includes(name), (on) => {
      run.extras = EXTRAS.filter((one) => (one === name ? on : run.extras.includes(one)));
    });
  return el(
    'section',
    { 'aria-labelledby': 'save-all' },
    el('h3', { id: 'save-all' }, say('folder.saveTitle')),
    el('p', {}, say('folder.saveHelp')),
    el(
      'div',
      { class: 'roads' },
      button(say('folder.zip'), () => act.save('zip'), { 'data-save': 'everything' }),
      writesFolders() && button(say('folder.intoFolder'), () => act.save('folder'), { 'data-save': 'folder' }),
      ...LISTS.map(([id, name]) => button(say(`folder.lists.${id}`), () => act.saveList(name), { 'data-save': name })),
    ),
    !writesFolders() && el('p', {}, say('folder.onlyZip')),
    el('details', {}, el('summary', {}, say('folder.extras.legend')), ...EXTRAS.map(extra)),
  );
}
