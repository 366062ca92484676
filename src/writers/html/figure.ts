import { CONTENT_WIDTH } from '../../charts/frame.ts';
import type { Drawing } from '../../model/drawing.ts';
import type { BlockOf } from '../../model/report.ts';
import { drawingSvg } from '../svg.ts';
import { plotted, underPlot } from './along.ts';
import { drawn, el, type Html } from './element.ts';
import { scroller, sideways } from './scroller.ts';
import type { Setting } from './setting.ts';
import { plainTable } from './table.ts';

/** A chart, named by its summary, and its numbers as a table one can open; where it can be broken into rows, so on a phone. */
export function chart({ title, drawing }: BlockOf<'chart'>, setting: Setting): Html {
  const name = title ?? setting.topic;
  // Asked for once: they are written anew each time.
  const { narrow, along = [] } = drawing;
  const table = asTable(name, drawing.table, setting);
  const reading = underPlot(drawing, along, setting);
  const wide = [
    scroller(
      setting.say('web.chart', { name: { q: 'word', value: name } }),
      plotted(picture(drawing, setting), drawing, along, setting),
    ),
    // What is half of a sheet wide needs no sliding.
    ...(partOf(drawing) === undefined ? [sideways(setting)] : []),
  ];
  return el(
    'figure',
    { class: partOf(drawing) },
    ...(title === undefined ? [] : [el('figcaption', {}, title)]),
    ...(narrow ? [el('div', { class: 'on-wide' }, ...wide)] : wide),
    ...(narrow
      ? [el('div', { class: 'on-narrow' }, plotted(picture(narrow, setting), narrow, narrow.along ?? [], setting))]
      : []),
    ...(reading.length === 0 ? table : [el('div', { class: 'under' }, ...reading, ...table)]),
    ...howToRead(drawing, setting),
  );
}

/** A picture of less than a page's width needs less of a window to be read. */
const partOf = ({ width }: Drawing): string | undefined =>
  width > 0.6 * CONTENT_WIDTH ? undefined : width > 0.3 * CONTENT_WIDTH ? 'half' : 'quarter';

export const picture = (drawing: Drawing, { grey, id, days }: Setting): Html =>
  drawn(drawingSvg(drawing, { grey, id: id('chart'), days: days !== undefined }));

/** One sentence on how to read a picture, beside the first of its kind. Not on paper. */
export function howToRead({ how }: Drawing, { say, first }: Setting): Html[] {
  if (how === undefined || !first(how)) return [];
  return [
    el(
      'details',
      { class: 'numbers how' },
      el('summary', {}, say('charts.howTo.title')),
      el('p', {}, say(`charts.howTo.${how}`)),
    ),
  ];
}

export function asTable(name: string, table: Drawing['table'], { say }: Setting): Html[] {
  if (!table || table.rows.length === 0) return [];
  const summary = el('summary', {}, say('web.asTable'), el('span', { class: 'unseen' }, `: ${name}`));
  return [el('details', { class: 'numbers' }, summary, scroller(name, plainTable(name, table)))];
}
