import type { Result } from '../../papers/resultNames.ts';
import { say } from '../say.ts';
import type { State } from '../state/state.ts';
import { button, el } from './make.ts';

export interface Saving {
  save(what: Result[], zip: boolean): void;
  print(): void;
}

/** What can be saved, each alone; the order is that of use. */
const OFFERED = [
  ...(['clinic', 'patient', 'further', 'method', 'interpretation', 'analysis', 'setAside', 'fhir', 'visit'] as const),
  ...(['clinicPage', 'patientPage', 'furtherPage'] as const),
] satisfies Result[];

/** Of one's own days neither a text to sign nor a file for a record system is wanted first. */
const NOT_OWN: readonly Result[] = ['interpretation', 'fhir', 'method', 'furtherPage', 'clinicPage'];

export function savingView({ way, read }: State, act: Saving): Node[] {
  const lost = (read?.setAside.length ?? 0) > 0;
  const offered = OFFERED.filter((what) => (lost || what !== 'setAside') && !(way === 'own' && NOT_OWN.includes(what)));
  const line = (what: (typeof OFFERED)[number]): HTMLElement =>
    el(
      'li',
      {},
      el('span', { id: `save-${what}` }, say(`save.of.${what}`)),
      button(say('save.one'), () => act.save([what], false), { 'aria-describedby': `save-${what}`, 'data-save': what }),
    );
  return [
    el('h3', {}, say('save.title')),
    el('p', {}, say('save.where')),
    el('ul', { class: 'saves' }, ...offered.map(line)),
    el(
      'div',
      { class: 'roads' },
      button(say('save.zip'), () => act.save([...offered], true), { 'data-save': 'zip' }),
      button(say('save.print'), act.print),
    ),
  ];
}
