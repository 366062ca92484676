import { isolated } from '../../language/index.ts';
import type { Block } from '../../model/report.ts';
import type { Agreed } from '../../model/visits.ts';
import { heading, type PageContext, type PageMaker, paragraph, word } from '../context.ts';
import { isThin } from './layout.ts';

/**
 * So many letters have room on the side on which the visit agrees; longer words stand whole on a sheet of their own, which that side
 * names: a page cannot know how it was laid out. `tests/pages/written.test.ts` holds these against all fields at their longest.
 */
const ROOM = { interpretation: 360, remarks: 180, agreed: 200 };
/** Beside the few days of the one sheet of thin data, and what was agreed before. */
const ROOM_THIN = { interpretation: 90, remarks: 60, agreed: 60 };

type Long = 'interpretation' | 'remarks';

/** Whether these words have room beside the rest. */
const short = (context: PageContext, of: keyof typeof ROOM, text: string): boolean =>
  text.length <= (isThin(context) ? ROOM_THIN : ROOM)[of] && !text.includes('\n');

const has = (written: Agreed | null): written is Agreed =>
  written !== null && Object.keys(written).some((name) => name !== 'by' && name !== 'on');

/** What was typed, when it is short enough to stand here; else where it stands. */
export function writtenHere(context: PageContext, of: Long): Block[] {
  const { speaker, written } = context;
  const text = written?.[of];
  if (text === undefined) return [];
  const label = speaker.say(`pages.written.${of}`);
  const shown = short(context, of, text) ? isolated(text) : speaker.say('pages.written.onSheet');
  return [{ kind: 'writeIn', label, lines: 0, text: shown }];
}

/** Who typed it in and when, and that nothing of it was worked out. */
export function signed({ speaker, written }: PageContext): Block[] {
  if (!has(written)) return [];
  const { by, on } = written;
  const params = {
    by: word(by === undefined ? 'none' : isolated(by)),
    on: word(on === undefined ? 'none' : speaker.value({ q: 'date', value: on }, 'dated')),
  };
  return [paragraph(speaker.say('pages.written.signed', params), 'small')];
}

/** What was agreed, in the order of the paper, each with its label, as it was typed; nothing of what was not. */
export function agreedTyped({ speaker, written }: PageContext): { name: AgreedField; label: string; text: string }[] {
  const { goal, step, helper, nextVisit, sure, question } = written ?? {};
  const next = nextVisit === undefined ? undefined : speaker.value({ q: 'date', value: nextVisit }, 'full');
  const all = { goals: goal, step, helper, next, question };
  const lines = (Object.keys(all) as (keyof typeof all)[]).flatMap((name) => {
    const text = all[name];
    const label = speaker.say(`pages.agreed.${name}`);
    return text === undefined ? [] : [{ name, label, text: name === 'next' ? text : isolated(text) }];
  });
  if (sure === undefined) return lines;
  return [...lines, { name: 'sure', label: speaker.say('pages.written.sure'), text: `${sure}/10` }];
}

export type AgreedField = 'goals' | 'step' | 'helper' | 'next' | 'sure' | 'question';

/** The same with words too long for this side named by where they stand. */
export const agreedHere = (context: PageContext): ReturnType<typeof agreedTyped> =>
  agreedTyped(context).map((one) =>
    short(context, 'agreed', one.text) ? one : { ...one, text: context.speaker.say('pages.written.onSheet') },
  );

/** Long words that were typed, whole: a sheet that is added only for them. */
export const writtenSheet: PageMaker = (context) => {
  const { speaker, written } = context;
  const long = [
    ...agreedTyped(context).flatMap(({ label, text }) =>
      short(context, 'agreed', text) ? [] : [{ label, lines: [text] }],
    ),
    ...(['interpretation', 'remarks'] as const).flatMap((of) => {
      const text = written?.[of] ?? '';
      return short(context, of, text) ? [] : [{ label: speaker.say(`pages.written.${of}`), lines: typedLines(text) }];
    }),
  ];
  if (long.length === 0) return null;
  const title = speaker.say('pages.written.title');
  const blocks = long.flatMap(({ label, lines }) => [heading(2, label), ...lines.map((line) => paragraph(line))]);
  return { id: 'written', title, blocks: [heading(1, title), ...signed(context), ...blocks] };
};

/** A paragraph for each line that was typed. */
export const typedLines = (text: string): string[] =>
  text.split('\n').flatMap((line) => (line.trim() === '' ? [] : [isolated(line)]));
