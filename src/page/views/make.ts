type Child = Node | string | null | undefined | false;

interface Props {
  [name: string]: string | number | boolean | undefined | ((event: Event) => void);
}

/** An element with attributes, listeners (a function under `onclick`, `onchange` …) and children. A string is always text. */
export function el<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  props: Props = {},
  ...children: Child[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(props)) {
    if (typeof value === 'function') element.addEventListener(name.slice(2), value);
    else if (value === true) element.setAttribute(name, '');
    else if (value !== undefined && value !== false) element.setAttribute(name, String(value));
  }
  element.append(
    ...children.filter((child): child is Node | string => child !== null && child !== undefined && child !== false),
  );
  return element;
}

export const button = (text: string, act: () => void, props: Props = {}): HTMLButtonElement =>
  el('button', { type: 'button', ...props, onclick: act }, text);

/** A list to choose one of; with `none`, nothing is chosen until somebody does. */
export function choice(
  label: string,
  options: readonly (readonly [value: string, text: string])[],
  chosen: string,
  act: (value: string) => void,
): HTMLLabelElement {
  const select = el('select', { onchange: () => act(select.value) });
  for (const [value, text] of options) select.append(el('option', { value, selected: value === chosen }, text));
  return el('label', { class: 'field' }, el('span', {}, label), select);
}

export function tick(label: string, on: boolean, act: (on: boolean) => void): HTMLLabelElement {
  const box = el('input', { type: 'checkbox', checked: on, onchange: () => act(box.checked) });
  return el('label', { class: 'tick' }, box, el('span', {}, label));
}

let ids = 0;
/** An id that no other element has. */
export const newId = (stem: string): string => {
  ids += 1;
  return `${stem}-${ids}`;
};

/** A table of texts; the first row may hold its titles. */
export function table(caption: string, titles: readonly string[], rows: readonly (readonly Child[])[]): HTMLElement {
  const head = el('tr', {}, ...titles.map((title) => el('th', { scope: 'col' }, title)));
  const lines = rows.map((cells) => el('tr', {}, ...cells.map((cell) => el('td', {}, cell))));
  return el(
    'div',
    { class: 'scroll', tabindex: 0, role: 'region', 'aria-label': caption },
    el('table', {}, el('caption', {}, caption), el('thead', {}, head), el('tbody', {}, ...lines)),
  );
}
