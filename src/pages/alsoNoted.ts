import type { LocalDate } from '../model/glucose.ts';
import type { Block, Cell } from '../model/report.ts';
import type { Below } from '../model/words.ts';
import { columnsOf, count, heading, type PageContext, paragraph, word } from './context.ts';

/** More are counted, not listed. */
const MOST_LISTED = 14;

/** Medicine as it was noted: what, how often and when. Nothing is said of what it did. */
export function medication(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const { noteLog } = analysis.measures;
  if (!noteLog.ok || noteLog.value.medication.length === 0) return [];
  const title = (name: Below<'pages.aroundNotes.medication'>): string =>
    speaker.say(`pages.aroundNotes.medication.${name}`);
  return [
    {
      kind: 'together',
      blocks: [
        heading(2, title('title')),
        {
          kind: 'table',
          caption: title('caption'),
          captionShown: false,
          columns: columnsOf(title, ['name', 0.24], ['notes', 0.1], ['days', 0.1], ['when', 0.56, 'words']),
          rows: noteLog.value.medication.map(({ name, days, notes }): Cell[] => [
            { text: name === '' ? title('noName') : name },
            { text: speaker.number(notes.length, 0) },
            { text: speaker.number(days, 0) },
            { text: listed(notes, context) },
          ]),
        },
        paragraph(title('how'), 'small'),
      ],
    },
  ];
}

/** Rises that look like meals nobody wrote down; only when asked for, and never as meals. */
export function rises(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const { meals } = analysis.measures;
  const found = meals.ok ? meals.value.filter(({ inferred }) => inferred) : [];
  if (found.length === 0) return [];
  return [
    {
      kind: 'together',
      blocks: [
        heading(2, speaker.say('pages.aroundNotes.inferred')),
        paragraph(speaker.say('pages.aroundNotes.rises', { count: count(found.length) })),
        paragraph(speaker.say('pages.aroundNotes.inferredAt', { times: word(listed(found, context)) }), 'small'),
      ],
    },
  ];
}

/** Days and times in order: a day is named once, and the last of a long list only counted. */
function listed(noted: readonly { date: LocalDate; minute: number | null }[], { speaker }: PageContext): string {
  const days = new Map<LocalDate, string[]>();
  for (const { date, minute } of noted.slice(0, MOST_LISTED)) {
    const times = days.get(date) ?? [];
    if (minute !== null) times.push(speaker.value({ q: 'clock', value: minute }));
    days.set(date, times);
  }
  // No line ends inside a date, nor between it and its first time.
  const dayTexts = [...days].map(([date, [first, ...later]]) => {
    const day = speaker.value({ q: 'date', value: date }, 'compact');
    const begun = first === undefined ? day : `${day} ${first}`;
    return [begun.replaceAll(' ', '\u00a0'), ...later].join(' ');
  });
  const more = noted.length - MOST_LISTED;
  return [...dayTexts, ...(more > 0 ? [speaker.say('pages.aroundNotes.andMore', { count: count(more) })] : [])].join(
    ', ',
  );
}
