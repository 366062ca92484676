import type { Drawing } from '../../model/drawing.ts';
import type { Block, BlockOf } from '../../model/report.ts';
import { drawingSvg } from '../svg.ts';
import { plotted, underPlot } from './along.ts';
import { drawn, el, type Html } from './element.ts';
import { asTable, howToRead, picture } from './figure.ts';
import { paragraph } from './prose.ts';
import { scroller, sideways } from './scroller.ts';
import type { Setting } from './setting.ts';
import { forTheEye } from './swatch.ts';

type Day = NonNullable<Drawing['day']>;
type DayBlock = BlockOf<'chart'> & { drawing: Drawing & { day: Day } };

/** Strips, and between them lines about days of which there is nothing to draw. */
export type OfStrips = DayBlock | BlockOf<'paragraph'>;

export const isDay = (block: Block): block is DayBlock => block.kind === 'chart' && block.drawing.day !== undefined;

export const isOfStrips = (block: Block): block is OfStrips => isDay(block) || block.kind === 'paragraph';

/**
 * Days one under another on one clock: they scroll sideways together, their curves can be read, and single days can be
 * hidden. Both of the last need the script, so their controls start out hidden.
 */
export function strips(blocks: readonly OfStrips[], setting: Setting): Html[] {
  const days = blocks.filter(isDay);
  const { say, topic } = setting;
  const ids = new Map(days.map((day) => [day, setting.id('day')]));
  // One day alone is neither chosen among others nor parted from its own clock.
  const several = days.length > 1;
  const inOrder = blocks.map((block) =>
    isDay(block) ? strip(block.drawing, ids.get(block)!, setting) : paragraph(block),
  );
  return [
    ...(several ? [chooser(ids, setting)] : []),
    sideways(setting),
    ...howToRead(days[0]!.drawing, setting),
    scroller(
      say('web.chart', { name: { q: 'word', value: topic } }),
      ...(several ? [clock(days[0]!.drawing, setting)] : []),
      ...inOrder,
    ),
  ];
}

function strip(drawing: DayBlock['drawing'], id: string, setting: Setting): Html {
  // Asked for once: they are written anew each time.
  const { table, along = [] } = drawing;
  return el(
    'figure',
    { class: 'strip', id },
    plotted(picture(drawing, setting), drawing, along, setting),
    el('div', { class: 'under' }, ...underPlot(drawing, along, setting), ...asTable(drawing.day.name, table, setting)),
  );
}

/** The hours once more, above the first strip. */
function clock({ width, day }: DayBlock['drawing'], { grey, id }: Setting): Html {
  const size = 8.5;
  const last = day.hours.length - 1;
  const svg = drawingSvg(
    {
      width,
      height: size + 4,
      summary: '',
      marks: day.hours.map((text, i) => ({
        kind: 'text',
        role: 'axis',
        x: day.left + ((day.right - day.left) * i) / last,
        y: size,
        text,
        size,
        anchor: i === 0 ? 'start' : i === last ? 'end' : 'middle',
      })),
    },
    { grey, id: id('clock') },
  );
  return el('div', { class: 'clock' }, drawn(forTheEye(svg, 'hours')));
}

/** `days`: each with its id. */
function chooser(days: ReadonlyMap<DayBlock, string>, { say }: Setting): Html {
  const all = { q: 'count' as const, value: days.size };
  const box = ([{ drawing }, id]: [DayBlock, string]) => {
    const input = el('input', { type: 'checkbox', checked: true, autocomplete: 'off', 'data-day': id });
    return el('li', {}, el('label', {}, input, el('span', {}, drawing.day.name)));
  };
  return el(
    'div',
    { class: 'chooser', hidden: true },
    el(
      'details',
      {},
      el('summary', {}, say('web.days.choose')),
      el(
        'fieldset',
        {},
        el('legend', {}, say('web.days.legend')),
        el('ul', { class: 'boxes days' }, ...[...days].map(box)),
        el('button', { type: 'button', 'data-set': 'all' }, say('web.days.all')),
        el('button', { type: 'button', 'data-set': 'none' }, say('web.days.none')),
      ),
    ),
    el(
      'p',
      {
        class: 'shown',
        role: 'status',
        'data-some': say('web.days.some', { shown: { q: 'word', value: '#' }, all }),
        'data-all': say('web.days.every', { all }),
      },
      say('web.days.every', { all }),
    ),
  );
}
