import type { Listed } from '../folderMessages.ts';
import type { Framed, Someone } from '../messages.ts';
import { say } from '../say.ts';
import type { Run, State } from '../state/state.ts';
import { printPaper, showPaper } from './frame.ts';
import { button, el } from './make.ts';
import { type Ordering, orderingView } from './ordering.ts';
import { type SavingAll, savingAllView } from './savingAll.ts';
import { markTab, tabList } from './tabs.ts';
import { linesOf } from './worklist.ts';

export interface Working extends Ordering, SavingAll {
  go(): void;
  stop(): void;
  open(person: Someone): void;
  /** The worklist as its web page has it, or as it is printed; undefined: there is none. */
  frame(form: 'screen' | 'paper'): Promise<Framed | undefined>;
}

/** The worklist, while it grows and afterwards. `update` shows what moved and leaves all else where it is. */
export interface FolderView {
  nodes: Node[];
  update(run: Run): void;
}

export function folderView(state: State, run: Run, act: Working): FolderView {
  const { found } = state;
  const people = new Map((found?.people ?? []).map((person) => [person.stem, person]));
  const rests = run.at === 'no';
  const far = progressView(run, act);
  const above = summaryView();
  const lines = linesOf((stem) => act.open(people.get(stem)!));
  const list = panelOf(run, lines.nodes, act);
  const again =
    <T extends unknown[]>(change: (...to: T) => void) =>
    (...to: T): void => {
      change(...to);
      list.again();
    };
  const ordering = { order: again(act.order), places: again(act.places), thresholds: again(act.thresholds) };
  return {
    nodes: [
      el('h2', { tabindex: -1 }, say('folder.title')),
      el('p', {}, found?.toldBy ?? ''),
      far.view,
      ...above.nodes,
      ...(rests ? [orderingView(run, ordering), savingAllView(run, act), list.tabs] : []),
      list.panel,
      above.passed,
    ],
    update({ listed }) {
      if (!listed) return;
      far.show(listed);
      above.show(listed);
      lines.show(listed);
    },
  };
}

/** How far the run has come, and how it is held and goes on. */
function progressView(run: Run, act: Working): { view: HTMLElement; show(listed: Listed): void } {
  const bar = el('progress', { max: 1, value: 0, 'aria-label': say('folder.list') });
  const far = el('p', { class: 'far' });
  const rests = run.at === 'no';
  const ending = run.saved || (run.stopped ? say('folder.stopped') : rests ? say('folder.done') : '');
  const parts = rests
    ? [el('p', { role: 'status' }, ending)]
    : [el('p', { role: 'status' }, say(run.at === 'saving' ? 'folder.saving' : 'folder.reading')), bar, far];
  const stop = say(run.at === 'saving' ? 'status.stop' : 'folder.stop');
  const step = rests ? run.stopped && button(say('folder.goOn'), act.go) : button(stop, act.stop);
  return {
    view: el('div', { class: 'progress' }, ...parts, step),
    show({ gone: { done, total }, progress }) {
      bar.max = Math.max(total, 1);
      bar.value = done;
      far.textContent = progress;
    },
  };
}

/** How many people stand where, and what the list is not. */
function summaryView(): { nodes: HTMLElement[]; passed: HTMLElement; show(listed: Listed): void } {
  const [lead, about] = [el('p', {}), el('p', {})];
  const groups = el('ul', { class: 'groups' });
  const wrong = el('p', { class: 'grave', hidden: true });
  const below = el('div', { hidden: true });
  const passed = el('p', { hidden: true });
  return {
    nodes: [wrong, lead, about, groups, below],
    passed,
    show(listed) {
      lead.textContent = listed.lead;
      about.textContent = listed.about;
      wrong.hidden = listed.wrong === '';
      wrong.textContent = listed.wrong;
      groups.replaceChildren(...listed.groups.map(([name, n]) => el('li', {}, el('strong', {}, n), ` ${name}`)));
      passed.hidden = listed.passedOver.length === 0;
      passed.textContent = say('folder.passedOver', { names: listed.passedOver.join(', ') });
      const { text = '', next = [] } = listed.line ?? {};
      below.hidden = text === '';
      below.replaceChildren(
        el('p', {}, el('strong', {}, text)),
        ...(next.length > 0
          ? [el('p', {}, say('folder.below')), el('ul', {}, ...next.map((one) => el('li', {}, one)))]
          : []),
      );
    },
  };
}

/** Everyone to be opened; or the worklist in a frame, to sort and look through, or in groups as it is printed. */
function panelOf(
  run: Run,
  lines: readonly Node[],
  act: Working,
): { tabs: HTMLElement; panel: HTMLElement; again(): void } {
  const place = el('div', { class: 'framed' });
  const print = button(say('folder.print'), () => printPaper(place), { 'data-do': 'print-list' });
  const framed = el('div', {}, el('div', { class: 'roads' }, print), place);
  const own = el('div', {}, ...lines);
  const rests = run.at === 'no';
  const panel = el('div', { id: 'list-panel', ...(rests ? { role: 'tabpanel' } : {}) }, own, framed);
  async function show(tab: Run['tab']): Promise<void> {
    run.tab = tab;
    own.hidden = tab !== 'list';
    framed.hidden = tab === 'list';
    if (tab === 'list') return;
    const list = await act.frame(tab);
    if (list && run.tab === tab && place.isConnected)
      await showPaper(place, list, say(`folder.tabs.${tab}`), [...document.fonts]);
  }
  const tabs = (['list', 'screen', 'paper'] as const).map((tab) => [tab, say(`folder.tabs.${tab}`)] as const);
  if (rests) panel.setAttribute('aria-labelledby', `tab-${run.tab}`);
  void show(rests ? run.tab : 'list');
  return {
    tabs: tabList(say('folder.list'), 'list-panel', tabs, run.tab, (tab) => {
      markTab('list-panel', tab);
      void show(tab);
    }),
    panel,
    again: () => void (run.tab !== 'list' && show(run.tab)),
  };
}
