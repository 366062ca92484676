import type { Sheet } from '../messages.ts';
import { say } from '../say.ts';
import type { State } from '../state/state.ts';
import { tabList } from './tabs.ts';

export interface Showing {
  sheet(sheet: Sheet): void;
}

const IN_ORDER: Record<State['way'], Sheet[]> = {
  own: ['patient', 'clinic', 'further'],
  visit: ['clinic', 'patient', 'further'],
};

export const firstSheet = (way: State['way']): Sheet => IN_ORDER[way][0]!;

export function tabsView(state: State, act: Showing): HTMLElement {
  const tabs = IN_ORDER[state.way].map((sheet) => [sheet, say(`sheets.${sheet}`)] as const);
  return tabList(say('sheets.list'), 'paper', tabs, state.sheet, act.sheet);
}
