import { el } from './make.ts';

/**
 * Tabs (ARIA Authoring Practices, tabs with automatic activation): arrows move, the panel follows. `panel`: id of the element that all of them
 * show themselves in; each tab's own id is `tab-` and its name.
 */
export function tabList<T extends string>(
  label: string,
  panel: string,
  tabs: readonly (readonly [name: T, text: string])[],
  chosen: T,
  act: (name: T) => void,
): HTMLElement {
  const names = tabs.map(([name]) => name);
  const buttons = tabs.map(([name, text]) =>
    el(
      'button',
      {
        ...{ type: 'button', role: 'tab', id: `tab-${name}`, 'aria-controls': panel },
        ...{ tabindex: name === chosen ? 0 : -1, 'aria-selected': String(name === chosen) },
        onclick: () => act(name),
      },
      text,
    ),
  );
  const list = el('div', { role: 'tablist', 'aria-label': label }, ...buttons);
  list.addEventListener('keydown', (event) => {
    const at = buttons.findIndex((tab) => tab.getAttribute('aria-selected') === 'true');
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: buttons.length - 1 }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    const next = names[(to + names.length) % names.length]!;
    act(next);
    document.getElementById(`tab-${next}`)?.focus();
  });
  return list;
}

/** Marks the chosen tab without making the tabs anew, so that the focus stays. */
export function markTab(panel: string, name: string): void {
  for (const tab of document.querySelectorAll(`[role=tab][aria-controls="${panel}"]`)) {
    const chosen = tab.id === `tab-${name}`;
    tab.setAttribute('aria-selected', String(chosen));
    tab.setAttribute('tabindex', chosen ? '0' : '-1');
  }
  document.getElementById(panel)?.setAttribute('aria-labelledby', `tab-${name}`);
}
