import { wholeWeeks } from '../../measures/weeks.ts';
import type { Remark } from '../../model/remarks.ts';
import type { Block } from '../../model/report.ts';
import { heading, type PageContext, type PageMaker, paragraph, tellAll } from '../context.ts';
import { isThin } from './layout.ts';
import { changesSaid, clockSaid } from './otherFindings.ts';
import { remarkLine } from './remarkLine.ts';
import { quoted } from './topicBox.ts';

/**
 * Lines of remarks for which the back of the first sheet has room at its fullest, with every picture as small as it may be, and what of
 * them weeks and a comparison take; letters of a line of remarks and of running text. More remarks go to a sheet of their own: page 1
 * names it, and cannot know how this side was laid out. `tests/pages/sides.test.ts` holds these against the people who need most.
 */
const ROOM = { lines: 22, weeks: 5, comparison: 13, agreed: 6, letters: 92, text: 90 };
/** Beside the few days of the one sheet of thin data. */
const ROOM_THIN = 3;

function roomFor(context: PageContext): number {
  if (isThin(context)) return ROOM_THIN;
  const { daily, thenAndNow, lastTime } = context.analysis.measures;
  const textLines = (lines: string[]): number =>
    lines.reduce((sum, line) => sum + Math.ceil(line.length / ROOM.text), 0);
  // Weeks give way to a comparison.
  const weeks = !thenAndNow.ok && daily.ok && wholeWeeks(daily.value).length > 1 ? ROOM.weeks : 0;
  const comparison = thenAndNow.ok ? ROOM.comparison + textLines(tellAll(context, changesSaid(context))) : 0;
  const agreed = lastTime.ok ? ROOM.agreed : 0;
  return Math.max(0, ROOM.lines - weeks - comparison - agreed - textLines(tellAll(context, clockSaid(context))));
}

/** All remarks but those that stand with the topic: near a low first, then in order of time; those that fit, and the others. */
function remarksOf(context: PageContext): { here: string[]; more: string[] } {
  const all = inOrder(context).map((remarks) => remarkLine(context, remarks));
  const room = roomFor(context);
  let lines = 0;
  const over = all.findIndex((line) => {
    lines += Math.ceil(line.length / ROOM.letters);
    return lines > room;
  });
  const fit = over < 0 ? all.length : over;
  return { here: all.slice(0, fit), more: all.slice(fit) };
}

/** The same words on several days are told once, with every time. */
function inOrder(context: PageContext): Remark[][] {
  const { remarks } = context.analysis.measures;
  if (!remarks.ok) return [];
  const elsewhere = quoted(context);
  const same = new Map<string, Remark[]>();
  for (const remark of remarks.value) {
    if (elsewhere.includes(remark)) continue;
    same.set(remark.text, [...(same.get(remark.text) ?? []), remark]);
  }
  const nearLow = (some: Remark[]): boolean => some.some(({ near }) => near.some(({ of }) => of === 'low'));
  return [...same.values()].sort((a, b) => Number(nearLow(b)) - Number(nearLow(a)) || a[0]!.at - b[0]!.at);
}

/** What fits of them, whole, and where the others are. */
export function remarks(context: PageContext): Block[] {
  const { speaker } = context;
  const { here, more } = remarksOf(context);
  // What stands on its own sheet alone is named on page 1.
  if (here.length === 0) return [];
  const blocks: Block[] = [heading(2, speaker.say('pages.visit.remarks'))];
  blocks.push({ kind: 'list', ordered: false, dense: true, items: here });
  // How many there are is told on page 1.
  if (more.length > 0) blocks.push(paragraph(speaker.say('pages.visit.remarksOthers'), 'small'));
  return blocks;
}

/** How many remarks stand on a sheet of their own. */
export const remarksApart = (context: PageContext): number => remarksOf(context).more.length;

/** Id of the page of remarks. */
export const REMARKS = 'remarks';

/** What did not fit there, whole: the one sheet that is added by itself. */
export const remarksSheet: PageMaker = (context) => {
  const { more } = remarksOf(context);
  if (more.length === 0) return null;
  const title = context.speaker.say('pages.visit.remarksSheet');
  return {
    id: REMARKS,
    title,
    blocks: [heading(1, title), { kind: 'list', ordered: false, dense: true, pairs: true, items: more }],
  };
};
