import { byMonth, calendarChart, MONTHS_A_ROW } from '../../charts/calendar.ts';
import { dayStripChart } from '../../charts/dayStrip.ts';
import type { Block } from '../../model/report.ts';
import { caution, heading, type PageMaker } from '../context.ts';

/** The front of the second sheet: what single days looked like. */
export const singleDays: PageMaker = (context) => {
  const { speaker, analysis, chart } = context;
  const { daily } = analysis.measures;
  const title = speaker.say('pages.dayStrips.title');
  const blocks: Block[] = [heading(1, title), caution(context, 'C11')];
  if (!daily.ok) return null;
  const days = daily.value;
  if (days.length > 28) {
    const months = byMonth(days);
    for (let first = 0; first < months.length; first += MONTHS_A_ROW)
      blocks.push({ kind: 'chart', drawing: calendarChart(months.slice(first, first + MONTHS_A_ROW), chart) });
  } else {
    const shown = days.slice(-10);
    blocks.push(
      ...shown.map(
        (day, i): Block => ({
          kind: 'chart',
          drawing: dayStripChart(analysis.timeline, day, days.length - shown.length + i, chart, {
            height: 24,
            clock: false,
            lanes: 2,
          }),
        }),
      ),
    );
  }
  return { id: 'days', title, blocks };
};
