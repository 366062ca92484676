import { isolated } from '../../language/index.ts';
import type { Instant, LocalDate } from '../../model/glucose.ts';
import type { Block } from '../../model/report.ts';
import type { Note } from '../../model/timeline.ts';
import { MINUTE_MS } from '../../time/calendar.ts';
import { count, heading, type PageContext, type PageMaker, paragraph, word } from '../context.ts';

/** Lines of remarks for which the back of the first sheet has room, and letters of such a line; more go to a sheet of their own. */
const ROOM = { lines: 16, letters: 92 };
/** A remark so near a low is told with it (ours). */
const NEAR = 240 * MINUTE_MS;
/** Alarms and changes of a sensor are signs beside the curve, not words of a person. */
const DEVICE: readonly Note['kind'][] = ['alarm', 'sensor', 'calibration'];

/** What a person wrote, as it stands, with every time at which it was written. */
interface Remark {
  text: string;
  notes: Note[];
  nearLow: boolean;
}

/** All remarks, those near a low first, then in order of time; those that fit beside the usual day, and the others. */
function remarksOf(context: PageContext): { here: string[]; more: string[] } {
  const here: string[] = [];
  const all = inOrder(context).map((remark) => lineOf(remark, context));
  let lines = 0;
  for (const line of all) {
    lines += Math.ceil(line.length / ROOM.letters);
    if (lines > ROOM.lines) break;
    here.push(line);
  }
  return { here, more: all.slice(here.length) };
}

function inOrder({ analysis }: PageContext): Remark[] {
  const { lows } = analysis.measures;
  const near = (at: Instant): boolean =>
    lows.ok && lows.value.list.some(({ start, end }) => at > start - NEAR && at < end + NEAR);
  const same = new Map<string, Note[]>();
  for (const note of analysis.timeline.notes) {
    const text = (note.text ?? '').trim();
    if (text === '' || DEVICE.includes(note.kind)) continue;
    same.set(text, [...(same.get(text) ?? []), note]);
  }
  return [...same]
    .map(([text, notes]) => ({ text, notes, nearLow: notes.some(({ at, timed }) => timed && near(at)) }))
    .sort((a, b) => Number(b.nearLow) - Number(a.nearLow) || a.notes[0]!.at - b.notes[0]!.at);
}

function lineOf({ text, notes }: Remark, { analysis, speaker }: PageContext): string {
  const when = notes.map(({ day, minute, timed }) => {
    const date = speaker.value({ q: 'date', value: analysis.timeline.days[day]!.date as LocalDate }, 'compact');
    return (timed ? `${date} ${speaker.value({ q: 'clock', value: minute }, 'short')}` : date).replaceAll(
      ' ',
      '\u00a0',
    );
  });
  return speaker.say('pages.visit.remark', { when: word(when.join(', ')), text: word(isolated(text)) });
}

/** What fits of them, whole, and where the others are. */
export function remarks(context: PageContext): Block[] {
  const { speaker } = context;
  const { here, more } = remarksOf(context);
  if (here.length + more.length === 0) return [];
  const blocks: Block[] = [heading(2, speaker.say('pages.visit.remarks'))];
  if (here.length > 0) blocks.push({ kind: 'list', ordered: false, dense: true, items: here });
  if (more.length > 0)
    blocks.push(paragraph(speaker.say('pages.visit.remarksMore', { count: count(more.length) }), 'small'));
  return blocks;
}

/** What did not fit there, whole: the one sheet that is added by itself. */
export const remarksSheet: PageMaker = (context) => {
  const { more } = remarksOf(context);
  if (more.length === 0) return null;
  const title = context.speaker.say('pages.visit.remarksSheet');
  return {
    id: 'remarks',
    title,
    blocks: [heading(1, title), { kind: 'list', ordered: false, dense: true, items: more }],
  };
};
