import type { Read } from '../messages.ts';
import { say, speak } from '../say.ts';
import type { Desk } from '../state/desk.ts';
import { toPrint } from '../state/printing.ts';
import type { Screen } from '../state/screen.ts';
import { hasAnswers, placed, type State } from '../state/state.ts';
import { askingView } from './asking.ts';
import { bringView } from './bring.ts';
import { openDayView } from './day.ts';
import { footView, headView } from './edges.ts';
import { facesView } from './faces.ts';
import { type FolderView, folderView } from './folder.ts';
import { printPaper, showPaper } from './frame.ts';
import { ledgerView, linesView } from './ledger.ts';
import { lookView } from './look.ts';
import { button, el } from './make.ts';
import { tabsView } from './papers.ts';
import { savingView } from './saving.ts';
import { statusView } from './status.ts';
import { stripView } from './strip.ts';
import { markTab } from './tabs.ts';
import { markKept, visitView } from './visit.ts';
import { whoView } from './who.ts';

const place = (id: string): HTMLElement => document.getElementById(id)!;
const put = (id: string, nodes: readonly (Node | false | null)[]): void => {
  const there = nodes.filter((node): node is Node => node instanceof Node);
  place(id).replaceChildren(...there);
  place(id).hidden = there.length === 0;
};
/** Where there is room beside the paper, its controls stand open. */
const ROOM = '(min-width: 60rem)';

/** The page as the state is. The desk is asked for late, as the two know each other. */
export function openScreen(state: State, desk: () => Desk): Screen & { dress(): void; noDrop(): void } {
  let shown: FolderView | null = null;
  const day = openDayView(place('day') as HTMLDialogElement, (date) => desk().showDay(date));

  function draw(): void {
    const { step, read } = state;
    const papers = step === 'papers' ? read : null;
    put('bring', bringView(state, { ...desk(), way: (way) => (state.way = way) }));
    put('status', statusView(state, desk()));
    drawWho();
    put('asked', step === 'asking' && read ? askingView(read, hasAnswers(state), desk()) : []);
    place('papers').hidden = papers === null;
    put('tabs', papers ? [tabsView(state, { sheet: (sheet) => void desk().show(sheet) })] : []);
    if (!papers) {
      place('paper').replaceChildren();
      place('paper').removeAttribute('aria-busy');
      day.close();
      put('faces', []);
    }
    put('look', papers ? [lookPart(papers)] : []);
    drawAround();
    const at = { who: 'who', folder: 'who', asking: 'asked', papers: 'told', failed: 'status', bring: '', reading: '' }[
      step
    ];
    if (at !== '') place(at).querySelector<HTMLElement>('[tabindex="-1"]')?.focus();
  }

  function drawWho(): void {
    const { step, found, run } = state;
    const { open, apart, folder } = desk();
    shown = null;
    if (step === 'folder' && run) {
      shown = folderView(state, run, {
        ...folder,
        addFaces: desk().addFaces,
        open: (person) => void open(person, true),
      });
      shown.update(run);
      put('who', shown.nodes);
    } else
      put(
        'who',
        step === 'who' && found
          ? whoView(found, state.since, { open, apart, begin: folder.go, ...desk().looking })
          : [],
      );
  }

  const lookPart = (read: Read): HTMLElement =>
    el(
      'details',
      { open: matchMedia(ROOM).matches },
      el('summary', {}, say('look.title')),
      ...lookView(state, read, { changed: () => desk().read(false) }),
    );

  function drawAround(): void {
    const { step, read } = state;
    const papers = step === 'papers' ? read : null;
    put('told', papers ? toldView(state, papers, desk()) : []);
    const saving = { save: desk().save, print: () => void printChosen() };
    put('saving', papers ? savingView(state, saving) : []);
    drawVisit();
    drawStrip();
    put('ledger', read && (papers || step === 'asking') ? ledgerView(read, state.found?.passedOver ?? [], desk()) : []);
  }

  function drawStrip(): void {
    const { step, read, days } = state;
    const some = step === 'papers' && read && days.length > 1;
    const choose = (from: string, to: string): void => {
      desk().period(from, to);
      put('look', read ? [lookPart(read)] : []);
    };
    put('strip', some ? stripView(days, read, choose) : []);
  }

  /** One after the other, each as it is shown; a browser asks about each. */
  async function printChosen(): Promise<void> {
    const before = state.sheet;
    for (const [sheet, remarks] of toPrint(state)) {
      await desk().show(sheet, remarks);
      printPaper(place('paper'));
    }
    await desk().show(before);
  }

  function drawVisit(): void {
    const { step, read, way } = state;
    const papers = step === 'papers' && way === 'visit' ? read : null;
    const before = document.activeElement;
    const focus = before?.getAttribute('data-field');
    const open = place('visit').querySelector('details')?.open ?? matchMedia(ROOM).matches;
    const parts = papers ? visitView(state, papers, desk().visit) : [];
    put('visit', papers ? [el('details', { open }, el('summary', {}, say('visit.title')), ...parts)] : []);
    const field = focus && place('visit').querySelector<HTMLElement>(`[data-field="${focus}"]`);
    if (!field) return;
    field.focus();
    // Whoever is writing goes on where they are.
    if (isText(before) && isText(field)) field.setSelectionRange(before.selectionStart, before.selectionEnd);
  }

  function dress(): void {
    speak(placed(state.place).language);
    document.title = say('title');
    put('head', headView(state, { language: changeLanguage }));
    put('foot', footView());
    place('skip').textContent = say('skip');
    draw();
  }

  function changeLanguage(to: string): void {
    state.place = to;
    dress();
    place('head').querySelector('select')?.focus();
    if (state.step === 'papers' || state.step === 'asking') desk().read(true);
    else if (state.step === 'who' || state.step === 'folder') void desk().looking.again();
  }

  return {
    draw,
    drawAround,
    drawRun: () => void (state.run && shown?.update(state.run)),
    drawVisit,
    drawFaces: (lacking, wrong) =>
      put(
        'faces',
        facesView(lacking, wrong, (files) => desk().addFaces(files)),
      ),
    drawStrip,
    drawKept: () => markKept(state),
    saved: (text) => {
      place('saved').textContent = text;
    },
    dress,
    busy: (on) => markBusy(place('papers'), on),
    coming: (on) => markBusy(place('paper'), on),
    noDrop: () => put('status', [el('p', { class: 'grave' }, say('status.noDrop'))]),
    async paper(sheet, paper, faces) {
      markTab('paper', sheet);
      const inside = await showPaper(place('paper'), paper, say(`sheets.${sheet}`), faces);
      if (inside) day.from(inside);
    },
    day: (shown, faces) => day.show(shown, faces),
  };
}

/** WAI-ARIA 1.2: the attribute holds a word, and without one says nothing. */
function markBusy(part: HTMLElement, on: boolean): void {
  if (on) part.setAttribute('aria-busy', 'true');
  else part.removeAttribute('aria-busy');
}

const isText = (one: Element | null): one is HTMLInputElement | HTMLTextAreaElement =>
  one instanceof HTMLTextAreaElement || (one instanceof HTMLInputElement && one.type === 'text');

function toldView(state: State, read: Read, desk: Desk): (Node | false)[] {
  const { person, ofMany } = state;
  return [
    el('h2', { tabindex: -1 }, ofMany && person ? say('told.of', { code: person.code }) : say('told.title')),
    el('p', {}, read.period?.sentence ?? ''),
    read.failed.length > 0 && el('p', { class: 'grave' }, say('told.failed', { names: read.failed.join(', ') })),
    ofMany && el('p', {}, button(say('who.back'), desk.back)),
    ...linesView(read.lines),
  ];
}
