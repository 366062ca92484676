import type { DaySeen, Read } from '../messages.ts';
import { say } from '../say.ts';
import { el } from './make.ts';

/**
 * Every day that the files hold, as high as much of it was read, with those that are looked at marked. Dragging over it chooses others;
 * for keys and for readers by ear the same is typed as two dates, so the bars are for the eye alone.
 */
export function stripView(days: readonly DaySeen[], read: Read, choose: (from: string, to: string) => void): Node[] {
  const { from = '', to = '' } = read.period ?? {};
  const bars = days.map(({ share, label }) => {
    const bar = el('span', { title: label });
    const fill = el('i');
    fill.style.height = `${Math.round(share * 100)}%`;
    bar.append(fill);
    return bar;
  });
  const inForce = (): void =>
    days.forEach(({ date }, i) => {
      bars[i]!.classList.toggle('in', date >= from && date <= to);
    });
  inForce();
  const row = el('div', { class: 'days', 'aria-hidden': 'true' }, ...bars);
  const line = el('p', {}, say('strip.help'));
  let first: number | null = null;
  let last = 0;
  const at = (event: PointerEvent): number => {
    const box = row.getBoundingClientRect();
    const index = Math.floor(((event.clientX - box.left) / box.width) * days.length);
    return Math.min(days.length - 1, Math.max(0, index));
  };
  const ends = (): [number, number] => [Math.min(first ?? last, last), Math.max(first ?? last, last)];
  const mark = (event: PointerEvent): void => {
    last = at(event);
    const [a, b] = ends();
    bars.forEach((bar, i) => {
      bar.classList.toggle('in', i >= a && i <= b);
    });
    line.textContent = `${days[a]!.label} – ${days[b]!.label}`;
  };
  row.addEventListener('pointerdown', (event) => {
    first = at(event);
    row.setPointerCapture(event.pointerId);
    mark(event);
  });
  row.addEventListener('pointermove', (event) => {
    if (first !== null) mark(event);
  });
  row.addEventListener('pointerup', (event) => {
    if (first === null) return;
    mark(event);
    const [a, b] = ends();
    first = null;
    choose(days[a]!.date, days[b]!.date);
  });
  // A finger that moves the page: nothing was chosen.
  row.addEventListener('pointercancel', () => {
    first = null;
    inForce();
    line.textContent = say('strip.help');
  });
  return [row, line];
}
