import type { Along, Drawing } from '../../model/drawing.ts';
import { el, type Html } from './element.ts';
import type { Setting } from './setting.ts';

/**
 * A picture with what lets its curves be read point by point, by pointer, finger or keys. It needs the script, so it starts out
 * hidden. What a reader by ear hears is the value of the slider: it speaks when it is moved, and else is silent.
 */
export const plotted = (picture: Html, drawing: Drawing, along: readonly Along[], setting: Setting): Html =>
  along.length === 0
    ? picture
    : el('div', { class: 'plot' }, picture, ...along.map((one) => slider(one, drawing, setting)));

function slider({ name, left, right, top, bottom, says }: Along, { width, height }: Drawing, { say }: Setting): Html {
  const share = (value: number): number => Math.round(value * 10_000) / 10_000;
  return el('input', {
    type: 'range',
    min: 0,
    max: says.length - 1,
    value: 0,
    autocomplete: 'off',
    hidden: true,
    'aria-label': say('web.along', { name: { q: 'word', value: name } }),
    'data-box': JSON.stringify([left / width, right / width, top / height, bottom / height].map(share)),
    'data-says': JSON.stringify(says),
  });
}

/** Under a picture of curves: what stands where one points, and for a picture of one day the way to see it large. */
export function underPlot({ date }: Drawing, along: readonly Along[], setting: Setting): Html[] {
  const large = date === undefined ? [] : dayButton(date, along[0]?.name ?? date, setting);
  if (along.length === 0 && large.length === 0) return [];
  return [el('p', { class: 'readout', 'aria-hidden': 'true' }), ...large];
}

function dayButton(date: string, name: string, { say, days }: Setting): Html[] {
  if (days === undefined) return [];
  const unseen = el('span', { class: 'unseen' }, `: ${name}`);
  return [el('button', { type: 'button', class: 'day', 'data-day': date }, say('web.largeDay'), unseen)];
}
