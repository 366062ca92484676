import type { Sheet } from '../messages.ts';
import { say } from '../say.ts';
import type { State } from '../state/state.ts';
import { el } from './make.ts';

export interface Showing {
  sheet(sheet: Sheet): void;
}

const IN_ORDER: Record<State['way'], Sheet[]> = {
  own: ['patient', 'clinic', 'further'],
  visit: ['clinic', 'patient', 'further'],
};

export const firstSheet = (way: State['way']): Sheet => IN_ORDER[way][0]!;

/** Tabs of the papers (ARIA Authoring Practices, tabs with automatic activation): arrows move, the panel follows. */
export function tabsView(state: State, act: Showing): HTMLElement {
  const tabs = IN_ORDER[state.way].map((sheet) => {
    const chosen = state.sheet === sheet;
    return el(
      'button',
      {
        ...{ type: 'button', role: 'tab', id: `tab-${sheet}`, 'aria-controls': 'paper', tabindex: chosen ? 0 : -1 },
        'aria-selected': String(chosen),
        onclick: () => act.sheet(sheet),
      },
      say(`sheets.${sheet}`),
    );
  });
  const list = el('div', { role: 'tablist', 'aria-label': say('sheets.list') }, ...tabs);
  list.addEventListener('keydown', (event) => {
    const at = tabs.findIndex((tab) => tab.getAttribute('aria-selected') === 'true');
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: tabs.length - 1 }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    const next = (to + tabs.length) % tabs.length;
    act.sheet(IN_ORDER[state.way][next]!);
    document.getElementById(`tab-${IN_ORDER[state.way][next]!}`)?.focus();
  });
  return list;
}

/** Marks the chosen tab without making the tabs anew, so that the focus stays. */
export function markTab(sheet: Sheet): void {
  for (const tab of document.querySelectorAll('[role=tab]')) {
    const chosen = tab.id === `tab-${sheet}`;
    tab.setAttribute('aria-selected', String(chosen));
    tab.setAttribute('tabindex', chosen ? '0' : '-1');
  }
  document.getElementById('paper')?.setAttribute('aria-labelledby', `tab-${sheet}`);
}
