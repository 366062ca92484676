import { say } from '../say.ts';
import type { Desk } from '../state/desk.ts';
import type { State } from '../state/state.ts';
import { button, el } from './make.ts';

/** What is on its way, or went wrong, and what can be done about it. */
export function statusView({ step, fault, person, ofMany }: State, desk: Desk): Node[] {
  if (step === 'failed')
    return [
      el('p', { class: 'grave', tabindex: -1 }, fault),
      button(say('status.retry'), () => void desk.retry()),
      ...(ofMany && person ? [button(say('who.back'), desk.back)] : []),
    ];
  if (step !== 'reading') return [];
  const heavy = person?.heavy === undefined ? [] : [el('p', {}, person.heavy)];
  return [el('p', {}, say('status.reading')), ...heavy, button(say('status.stop'), desk.stop)];
}
