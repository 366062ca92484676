import type { DayShown } from '../messages.ts';
import { say } from '../say.ts';
import { showPaper } from './frame.ts';
import { button, el } from './make.ts';

export interface DayView {
  /** Opens, or shows another day in the place of the one before. */
  show(day: DayShown, faces: readonly FontFace[]): Promise<void>;
  close(): void;
  /** Has the dates of a paper in a frame lead here. */
  from(inside: Document): void;
}

/** A day large, over the papers. Escape closes it, and whoever came from a date in a paper is back there. */
export function openDayView(dialog: HTMLDialogElement, go: (date: string) => void): DayView {
  let cameFrom: HTMLElement | null = null;
  // It scrolls, so keys must be able to reach it.
  const place = el('div', { class: 'sheet', tabindex: 0, role: 'group', 'aria-labelledby': 'day-name' });
  const name = el('h2', { id: 'day-name', tabindex: -1, 'aria-live': 'polite' });
  const roads = el('div', { class: 'roads' });
  dialog.append(el('div', { class: 'bar' }, name, roads), place);
  dialog.addEventListener('close', () => {
    place.replaceChildren();
    if (cameFrom?.isConnected) focusWithin(cameFrom);
  });
  const step = (way: 'before' | 'after', date: string | null): HTMLButtonElement =>
    button(say(`day.${way}`), () => date !== null && go(date), { 'data-go': way, disabled: date === null });
  return {
    async show({ name: text, before, after, paper }, faces) {
      const pressed = document.activeElement?.getAttribute('data-go');
      name.textContent = text;
      roads.replaceChildren(
        step('before', before),
        step('after', after),
        button(say('day.close'), () => dialog.close(), { 'data-go': 'close' }),
      );
      if (!dialog.open) dialog.showModal();
      // Whoever goes on from day to day stays on that button, or where there is none further, on the day's name.
      const again = pressed ? roads.querySelector<HTMLElement>(`[data-go="${pressed}"]:enabled`) : null;
      (again ?? name).focus();
      const inside = await showPaper(place, paper, text, faces);
      // Keys that are pressed in a frame reach no dialog around it.
      inside?.addEventListener('keydown', (event) => {
        if (event.key === 'Escape') dialog.close();
      });
    },
    close: () => dialog.close(),
    from: (inside) =>
      leadToDays(inside, (date, link) => {
        cameFrom = link;
        go(date);
      }),
  };
}

/** The window of a frame has to have the focus before something in it can. */
function focusWithin(element: HTMLElement): void {
  element.ownerDocument.defaultView?.focus();
  element.focus();
}

/** What leads to a day does so by click and, as it is no link of the engine's, by the keys of a button. */
function leadToDays(inside: Document, open: (date: string, from: HTMLElement) => void): void {
  const act = (event: Event): void => {
    const { target } = event;
    const from = isElement(target) ? target.closest<HTMLElement>('[data-day]:not(input)') : null;
    const { day } = from?.dataset ?? {};
    if (!from || day === undefined) return;
    event.preventDefault();
    open(day, from);
  };
  inside.addEventListener('click', act);
  inside.addEventListener('keydown', (event) => {
    const link = isElement(event.target) && event.target.matches('a.day');
    if (link && (event.key === 'Enter' || event.key === ' ')) act(event);
  });
}

/** Elements of a frame are made by another window's classes. */
const isElement = (target: EventTarget | null): target is Element => target !== null && 'closest' in target;
