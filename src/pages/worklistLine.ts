import type { Speaker } from '../language/index.ts';
import type { Block } from '../model/report.ts';
import { count, heading, paragraph, word } from './context.ts';
import type { WorklistContent } from './worklist.ts';
import { pointsText, topicText } from './worklistTexts.ts';

type Line = NonNullable<WorklistContent['line']>;

/** How many the day has room for, and who stands below. */
export function theLine({ line }: WorklistContent, speaker: Speaker): Block[] {
  if (line === null) return [];
  const text = paragraph(lineText(line, speaker), 'strong');
  const items = nextTexts(line, speaker);
  if (items.length === 0) return [text];
  return [text, heading(2, speaker.say('pages.worklist.line.next')), { kind: 'list', ordered: false, items }];
}

export function lineText({ places, first, below, lows, unread }: Line, speaker: Speaker): string {
  const full = { places: count(places), last: count(first), below: count(below) };
  return [
    speaker.say('pages.worklist.line.full', full),
    ...(below > 0 ? [speaker.say('pages.worklist.line.graver', { lows: count(lows), unread: count(unread) })] : []),
  ].join(' ');
}

/** The first of those who are to be looked at and stand below. */
export const nextTexts = ({ next }: Line, speaker: Speaker): string[] =>
  next.map((one) =>
    speaker.say('pages.worklist.line.nextOne', {
      number: count(one.number),
      code: word(one.outcome.code),
      topic: word(topicText(speaker, one)),
      points: word(pointsText(speaker, one)),
    }),
  );
