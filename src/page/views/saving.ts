import type { Result } from '../../papers/resultNames.ts';
import type { Sheet, Ticked } from '../messages.ts';
import { writesFolders } from '../save/directory.ts';
import { say } from '../say.ts';
import { PAPERS } from '../state/printing.ts';
import type { Into } from '../state/saving.ts';
import type { State } from '../state/state.ts';
import { button, el, tick } from './make.ts';

export interface Saving {
  save(what: Result[], into: Into): void;
  /** The sheets that are ticked, one after the other. */
  print(): void;
}

/** What can be saved, each alone; the order is that of use. */
const OFFERED = [
  ...(['clinic', 'patient', 'further', 'method', 'interpretation', 'analysis', 'setAside', 'fhir', 'visit'] as const),
  ...(['clinicPage', 'patientPage', 'furtherPage'] as const),
] satisfies Result[];

/** Of one's own days neither a text to sign nor a file for a record system is wanted first. */
const NOT_OWN: readonly Result[] = ['interpretation', 'fhir', 'method', 'furtherPage', 'clinicPage'];

export function savingView(state: State, act: Saving): Node[] {
  const { way, read } = state;
  const lost = (read?.setAside.length ?? 0) > 0;
  const offered = OFFERED.filter((what) => (lost || what !== 'setAside') && !(way === 'own' && NOT_OWN.includes(what)));
  const line = (what: (typeof OFFERED)[number]): HTMLElement =>
    el(
      'li',
      {},
      el('span', { id: `save-${what}` }, say(`save.of.${what}`)),
      button(say('save.one'), () => act.save([what], 'each'), {
        'aria-describedby': `save-${what}`,
        'data-save': what,
      }),
    );
  return [
    el('h3', {}, say('save.title')),
    sheets(state, act),
    el('p', {}, say('save.where')),
    el('ul', { class: 'saves' }, ...offered.map(line)),
    el(
      'div',
      { class: 'roads' },
      button(say('save.zip'), () => act.save([...offered], 'zip'), { 'data-save': 'zip' }),
      writesFolders() && button(say('save.folder'), () => act.save([...offered], 'folder'), { 'data-save': 'folder' }),
    ),
    el('p', { id: 'saved', role: 'status' }),
  ];
}

const TICKED: readonly Ticked[] = ['clinic', 'remarks', 'patient', 'further'];

/** The sheets of a visit, to tick: printed or saved together. */
function sheets(state: State, act: Saving): HTMLElement {
  const all: Ticked[] = ['clinic', ...(state.read?.remarks ? (['remarks'] as const) : []), 'patient', 'further'];
  // Saved, the sheet of remarks goes with the report that it belongs to.
  const chosen = (): Sheet[] => PAPERS.filter((sheet) => state.sheets.includes(sheet));
  const box = (sheet: Ticked): HTMLElement =>
    tick(say(`sheets.${sheet}`), state.sheets.includes(sheet), (on) => {
      state.sheets = TICKED.filter((one) => (one === sheet ? on : state.sheets.includes(one)));
    });
  return el(
    'fieldset',
    {},
    el('legend', {}, say('save.sheets')),
    ...all.map(box),
    el(
      'div',
      { class: 'roads' },
      button(say('save.print'), act.print, { 'data-save': 'print' }),
      button(say('save.chosen'), () => chosen().length > 0 && act.save(chosen(), 'zip'), { 'data-save': 'chosen' }),
    ),
    el('p', { class: 'shows' }, say('save.printHow')),
    state.read?.remarks === true && el('p', { class: 'shows' }, say('save.remarksHow')),
  );
}
