import type { Block, Cell } from '../../model/report.ts';
import { storyOf } from '../../topics/index.ts';
import { laidOver, sessionPairs } from '../aroundPictures.ts';
import { denseTable, heading, type PageContext } from '../context.ts';
import { linedUpLows } from '../readingOrders.ts';
import { ABOUT_HIGHS, highDays } from './highsLine.ts';

/** What the topic rests on, and nothing else: lows lined up, exercise beside lows, insulin notes beside highs, meals laid over one another. */
export function evidence(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const [first] = analysis.topics;
  if (!first) return [];
  const { exercise, meals } = analysis.measures;
  const story = storyOf(analysis.found, analysis.topics);
  const forms: Block[][] = [];
  const low = /low/.test(first.id) || story === 'before-lows';
  if (low && exercise.ok && exercise.value.length > 1) forms.push(sessionPairs(context));
  if (low) forms.push(linedUpLows(context), linedUpLows(context, true));
  if (!low && ABOUT_HIGHS.test(first.id) && highDays(context).length > 0) forms.push([besideHighs(context)]);
  if (meals.ok && !low) forms.push(laidOver(context, meals.value));
  const some = forms.filter((blocks) => blocks.length > 0);
  if (some.length === 0) return [];
  const title = heading(2, speaker.say('pages.visit.evidence'));
  const all = some.length > 1 ? [some.slice(0, 2).flat()] : [];
  const under = (blocks: Block[]) => () => [title, ...blocks];
  return [{ kind: 'fit', gives: 4, forms: [...[...all, ...some].map(under), () => []] }];
}

/** The days with most time far above range, each with the insulin and the food that is noted. */
function besideHighs(context: PageContext): Block {
  const { speaker, analysis } = context;
  const { notes, days } = analysis.timeline;
  const title = (name: 'day' | 'far' | 'highest' | 'insulin' | 'food') => speaker.say(`pages.visit.beside.${name}`);
  const rows = highDays(context).map((day): Cell[] => {
    const of = (kind: 'insulin' | 'meal') =>
      notes.filter((note) => note.kind === kind && days[note.day]!.date === day.date);
    const notedText = (kind: 'insulin' | 'meal'): string => {
      const some = of(kind);
      if (some.length === 0) return speaker.say('pages.visit.beside.none');
      const sum = some.reduce((total, { amount }) => total + (amount ?? 0), 0);
      return speaker.say('pages.visit.beside.noted', {
        notes: { q: 'count', value: some.length },
        kind: { q: 'word', value: kind },
        sum: { q: 'word', value: sum === 0 ? '' : speaker.number(Math.round(sum * 10) / 10, sum % 1 === 0 ? 0 : 1) },
        known: { q: 'word', value: sum === 0 ? 'no' : 'yes' },
      });
    };
    const outer = analysis.targets.limits[analysis.timeline.unit].veryHigh !== null;
    return [
      { text: speaker.value({ q: 'date', value: day.date }, 'short'), strong: true },
      { text: speaker.value({ q: 'minutes', value: outer ? day.minutes['very-high'] : day.minutes.high }, 'short') },
      {
        text:
          day.highest === null ? '–' : speaker.value({ q: 'glucose', value: day.highest, limit: day.limits.highest }),
      },
      { text: notedText('insulin') },
      { text: notedText('meal') },
    ];
  });
  return denseTable(
    speaker.say('pages.visit.beside.caption'),
    [
      { title: title('day'), align: 'start', width: 0.2 },
      { title: title('far'), align: 'end', width: 0.16 },
      { title: title('highest'), align: 'end', width: 0.16 },
      { title: title('insulin'), align: 'start', width: 0.24 },
      { title: title('food'), align: 'start', width: 0.24 },
    ],
    rows,
  );
}
