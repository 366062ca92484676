import { runsIntoNight } from '../findings/evidence/episodes.ts';
import type { FindingId } from '../findings/index.ts';
import type { Episode } from '../model/measures.ts';
import type { Block } from '../model/report.ts';
import type { Below } from '../model/words.ts';
import { AROUND_NOTES } from '../topics/index.ts';
import {
  columnsOf,
  denseTable,
  evidenceDays,
  findingText,
  heading,
  nameOf,
  type PageContext,
  type PageMaker,
  paragraph,
} from './context.ts';
import { everyHigh } from './everyHigh.ts';
import { lowCells } from './lowCells.ts';
import { ownWords } from './ownWords.ts';

/** Every finding that holds, safety first, with what it rests on; then what the data could not tell. */
export const standsOut: PageMaker = (context) => {
  const { speaker, analysis } = context;
  // What notes tell stands on a page of its own.
  const found = analysis.found.filter(({ id }) => !(AROUND_NOTES as readonly FindingId[]).includes(id));
  const holding = found.filter((one) => one.look.case === 'holds').map((one) => one.id);
  const blocks: Block[] = [heading(1, speaker.say('pages.standsOut.title'))];
  if (holding.length === 0) blocks.push(paragraph(speaker.say('pages.standsOut.none')));
  for (const id of holding) blocks.push(...statement(context, id));
  const untold = found.filter((one) => one.look.case === 'untold');
  if (untold.length > 0)
    blocks.push(heading(2, speaker.say('pages.standsOut.untold')), {
      kind: 'list',
      ordered: false,
      items: untold.map(({ id, look }) =>
        speaker.say('pages.standsOut.untoldLine', {
          text: { q: 'word', value: speaker.say(`findings.${id}.untold`) },
          why: { q: 'word', value: look.case === 'untold' ? speaker.say(`why.${look.why}`) : '' },
        }),
      ),
    });
  blocks.push(...everyLow(context), ...everyHigh(context), ...ownWords(context));
  return { id: 'stands-out', title: speaker.say('pages.standsOut.title'), blocks };
};

function statement(context: PageContext, id: FindingId): Block[] {
  const { speaker, analysis } = context;
  const what = findingText(context, id, 'what');
  const look = analysis.found.find((one) => one.id === id)?.look;
  if (what === null || look?.case !== 'holds') return [];
  const blocks: Block[] = [heading(3, nameOf(context, id, 'name', look)), paragraph(what)];
  const why = findingText(context, id, 'why');
  const ask = findingText(context, id, 'ask');
  const more = [why, ask && speaker.say('pages.standsOut.ask', { ask: { q: 'word', value: ask } })].filter(
    (line) => line !== null,
  );
  if (more.length > 0) blocks.push(paragraph(more.join(' ')));
  const days = evidenceDays(context, look.where);
  if (days !== '')
    blocks.push(paragraph(speaker.say('pages.standsOut.seen', { days: { q: 'word', value: days } }), 'small'));
  return [{ kind: 'together', blocks }];
}

/** The lows one by one, since no picture of many shows each. */
function everyLow(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const { lows } = analysis.measures;
  if (!lows.ok || lows.value.list.length === 0) return [];
  const title = (column: Exclude<Below<'pages.everyLow'>, 'when'>) => speaker.say(`pages.everyLow.${column}`);
  const night = (low: Episode) => (low.night ? title('night') : runsIntoNight(low) ? title('into') : '');
  return [
    heading(2, title('title')),
    denseTable(
      title('title'),
      columnsOf(title, ['start', 0.34], ['minutes', 0.14], ['lowest', 0.18], ['outer', 0.14], ['note', 0.2, 'words']),
      lows.value.list.map((low) => {
        const cut = low.cut.start || low.cut.end;
        return [
          ...lowCells(context, low),
          { text: speaker.value({ q: 'minutes', value: low.outerMinutes }, 'short') },
          { text: [night(low), cut ? title('cut') : ''].filter((one) => one !== '').join(', ') },
        ];
      }),
    ),
  ];
}
