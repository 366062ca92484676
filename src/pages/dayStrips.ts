import { dayStripChart } from '../charts/dayStrip.ts';
import type { NoteKind } from '../model/input.ts';
import type { Block } from '../model/report.ts';
import { caution, heading, type PageMaker, paragraph } from './context.ts';

/** Height of the curve in a strip: seven days a sheet for a fortnight, denser rows for longer periods. */
const heightFor = (days: number): number => (days <= 21 ? 50 : 34);
const PER_SHEET = (days: number): number => (days <= 21 ? 7 : 9);

/** One strip a day, all on the same axes, with the notes of that day under its curve. */
export const dayStrips: PageMaker = (context) => {
  const { say, analysis, chart } = context;
  const { timeline, measures } = analysis;
  if (!measures.daily.ok) return null;
  const daily = measures.daily.value;
  const height = heightFor(daily.length);
  const perSheet = PER_SHEET(daily.length);
  const kinds = [...new Set(timeline.notes.filter((note) => note.timed).map((note) => note.kind))].sort() as NoteKind[];
  const key = kinds.map((kind) =>
    say.say('pages.dayStrips.sign', {
      letter: { q: 'word', value: say.say(`notes.${kind}.letter`) },
      name: { q: 'word', value: say.say(`notes.${kind}.name`) },
    }),
  );
  const blocks: Block[] = [
    heading(1, say.say('pages.dayStrips.title')),
    paragraph(
      say.say('pages.dayStrips.how', {
        notes: { q: 'count', value: kinds.length },
        key: { q: 'word', value: key.join(', ') },
      }),
    ),
  ];
  if (timeline.gaps.length > 0) blocks.push(caution(context, 'C11'));
  for (const [index, summary] of daily.entries()) {
    const last = index === daily.length - 1;
    const clock = (index + 1) % perSheet === 0 || last;
    blocks.push({ kind: 'chart', drawing: dayStripChart(timeline, summary, index, chart, { height, clock }) });
    if (clock && !last) blocks.push({ kind: 'pageBreak' });
  }
  return { id: 'day-strips', title: say.say('pages.dayStrips.title'), blocks };
};
