import { hourSharesChart } from '../charts/hourShares.ts';
import { beyondIn, CURVE_LABELS, modalDayChart } from '../charts/modalDay.ts';
import type { FindingId } from '../findings/index.ts';
import type { Block } from '../model/report.ts';
import { heading, type PageContext, type PageMaker, paragraph, space, tellAll } from './context.ts';
import { curveTable } from './curveTable.ts';
import { pregnancyBlocks } from './pregnancy.ts';
import { readingOrders } from './readingOrders.ts';

export const CLOCK_FINDINGS: readonly FindingId[] = [
  'high-after-window',
  'dawn-rise',
  'overnight-fall',
  'steady-nights',
  'wide-spread',
  'best-window',
  'lows-clustered',
] as const;
/** Where on the clock glucose usually runs, how far days differ, and what share of each hour lay in each band. */
export const usualDay: PageMaker = (context) => {
  const { speaker, analysis, chart } = context;
  const { modalDay, hourly } = analysis.measures;
  const blocks: Block[] = [heading(1, speaker.say('pages.usualDay.title'))];
  if (!modalDay.ok)
    blocks.push(
      paragraph(
        speaker.say('pages.usualDay.untold', { why: { q: 'word', value: speaker.say(`why.${modalDay.why}`) } }),
      ),
    );
  else {
    blocks.push(
      paragraph(
        speaker.say('pages.usualDay.how', {
          days: { q: 'count', value: modalDay.value.bins.reduce((most, bin) => Math.max(most, bin.days), 0) },
          minutes: { q: 'count', value: modalDay.value.binMinutes },
        }),
      ),
      {
        kind: 'chart',
        title: speaker.say('pages.usualDay.ribbons', { unit: { q: 'word', value: speaker.unit } }),
        drawing: modalDayChart(modalDay.value, chart, {
          height: 196,
          outer: true,
          beyond: beyondIn(analysis.timeline),
        }),
      },
    );
  }
  blocks.push(...curveTable(context, ['p75', 'p50', 'p25']));
  if (hourly.ok)
    blocks.push(space(6), {
      kind: 'chart',
      title: speaker.say('pages.usualDay.shares'),
      drawing: hourSharesChart(hourly.value, chart, { height: 84, right: CURVE_LABELS }),
    });
  const lines = clockLines(context);
  if (lines.length > 0)
    blocks.push(heading(2, speaker.say('pages.usualDay.clock')), { kind: 'list', items: lines, ordered: false });
  blocks.push(...readingOrders(context), ...pregnancyBlocks(context));
  return { id: 'usual-day', title: speaker.say('pages.usualDay.title'), blocks };
};

/** What can be said of the clock, in order of print. */
function clockLines(context: PageContext): string[] {
  const { speaker, analysis } = context;
  const { windows } = analysis.measures;
  const lines = tellAll(context, CLOCK_FINDINGS);
  if (!windows.ok) return lines;
  const { fromMinute, toMinute, inRange } = windows.value.hardest;
  const hardest = speaker.say('pages.usualDay.hardest', {
    from: { q: 'clock', value: fromMinute },
    to: { q: 'clock', value: toMinute },
    inRange: { q: 'share', value: inRange },
  });
  return [...lines, hardest];
}
