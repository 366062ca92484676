import type { Near, Remark } from '../model/remarks.ts';
import type { Block, Cell } from '../model/report.ts';
import type { Below } from '../model/words.ts';
import { columnsOf, denseTable, heading, type PageContext, word } from './context.ts';

/** Every remark, whole and in order, beside the low, the high or the night it stands near. */
export function ownWords(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const { remarks } = analysis.measures;
  if (!remarks.ok) return [];
  const title = (name: Below<'pages.standsOut.remarks'> & ('title' | 'caption' | 'when' | 'text' | 'near')) =>
    speaker.say(`pages.standsOut.remarks.${name}`);
  return [
    heading(2, title('title')),
    denseTable(
      title('caption'),
      columnsOf(title, ['when', 0.2], ['text', 0.5, 'words'], ['near', 0.3, 'words']),
      remarks.value.map((remark): Cell[] => [
        { text: whenOf(context, remark) },
        { text: remark.text },
        { text: remark.near.map((near) => nearOf(context, near)).join('; ') || '–', muted: true },
      ]),
    ),
  ];
}

function whenOf({ speaker }: PageContext, { date, minute }: Pick<Remark, 'date' | 'minute'>): string {
  const day = speaker.value({ q: 'date', value: date }, 'compact');
  return minute === null ? day : `${day} ${speaker.value({ q: 'clock', value: minute }, 'short')}`;
}

function nearOf(context: PageContext, near: Near): string {
  const { speaker, analysis } = context;
  if (near.of === 'night')
    return speaker.say('pages.standsOut.remarks.night', {
      date: word(speaker.value({ q: 'date', value: near.date }, 'compact')),
    });
  const { lows, highs } = analysis.measures;
  const list = near.of === 'low' ? lows : highs;
  const one = list.ok ? list.value.list[near.index] : undefined;
  if (!one) return '';
  const when = word(whenOf(context, { date: one.date, minute: one.startMinute }));
  return speaker.say(`pages.standsOut.remarks.${near.of}`, { when });
}
