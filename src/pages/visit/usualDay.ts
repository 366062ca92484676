import { hourSharesChart } from '../../charts/hourShares.ts';
import { beyondIn, CURVE_LABELS, modalDayChart } from '../../charts/modalDay.ts';
import type { Block } from '../../model/report.ts';
import { heading, type PageMaker, paragraph, space, tellAll } from '../context.ts';
import { lastTime } from './lastTime.ts';
import { clockSaid } from './otherFindings.ts';
import { remarks } from './remarks.ts';
import { sinceLastTime } from './sinceLastTime.ts';
import { weekByWeek } from './weekByWeek.ts';

/** Heights of the ribbon that are tried. */
const RIBBON = [230, 196, 170, 146, 124, 108];
/** Of the bars of the hours, under it, and in its place. */
const BARS = 64;
const BARS_ALONE = [200, 160, 120, 90, BARS];

/** The back of the first sheet: what was agreed last time, how the usual day runs, whether it changed, and what the person wrote. */
export const usualDaySide: PageMaker = (context) => {
  const { speaker, analysis, chart } = context;
  const { modalDay, hourly } = analysis.measures;
  const title = speaker.say('pages.usualDay.title');
  const blocks: Block[] = [heading(1, title), ...lastTime(context)];
  if (!modalDay.ok)
    blocks.push(
      paragraph(
        speaker.say('pages.usualDay.untold', { why: { q: 'word', value: speaker.say(`why.${modalDay.why}`) } }),
      ),
    );
  else
    blocks.push({
      kind: 'fit',
      gives: 1,
      forms: RIBBON.map((height) => () => [
        {
          kind: 'chart',
          title: speaker.say('pages.usualDay.ribbons', { unit: { q: 'word', value: speaker.unit } }),
          drawing: modalDayChart(modalDay.value, chart, { height, outer: true, beyond: beyondIn(analysis.timeline) }),
        },
      ]),
    });
  if (hourly.ok) {
    const bars = (height: number): Block => ({
      kind: 'chart',
      title: speaker.say('pages.usualDay.shares'),
      drawing: hourSharesChart(hourly.value, chart, { height, right: CURVE_LABELS }),
    });
    blocks.push(space(2));
    if (modalDay.ok) blocks.push(bars(BARS));
    else blocks.push({ kind: 'fit', gives: 1, forms: BARS_ALONE.map((height) => () => [bars(height)]) });
  }
  const lines = tellAll(context, clockSaid(context));
  if (lines.length > 0) blocks.push({ kind: 'list', items: lines, ordered: false });
  blocks.push(...weekByWeek(context), ...sinceLastTime(context), ...remarks(context));
  return { id: 'clock', title, blocks };
};
