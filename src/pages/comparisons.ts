import type { Comparison, Side, Unusable } from '../model/occasions.ts';
import type { Quantity } from '../model/quantity.ts';
import type { Block, Cell } from '../model/report.ts';
import { NIGHT_END } from '../targets/consensus.ts';
import { columnsOf, count, denseTable, heading, type PageContext, paragraph, word } from './context.ts';

const SIX: { six: Quantity } = { six: { q: 'clock', value: NIGHT_END } };
const REASONS: readonly Unusable[] = ['overlap', 'gap', 'low-at-start', 'exercise', 'small'];

/** Everything that was compared, also where nothing came of it: what is not told here was not looked at. */
export function comparisonsBlocks(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const { comparisons, meals } = analysis.measures;
  if (!comparisons.ok || comparisons.value.length === 0) return [];
  const fewFoods = comparisons.value.filter((one) => one.id === 'food' && one.verdict === 'too-few');
  const listed = comparisons.value.filter((one) => !fewFoods.includes(one));
  const lines: string[] = [speaker.say('pages.aroundNotes.how', SIX)];
  if (fewFoods.length > 0)
    lines.push(
      speaker.say('pages.aroundNotes.fewFoods', {
        foods: word(
          fewFoods
            .map(({ a }) => speaker.say('pages.aroundNotes.fewFood', { food: word(a.name), n: count(a.n) }))
            .join(', '),
        ),
      }),
    );
  if (meals.ok) {
    const setApart = REASONS.flatMap((reason) => {
      const n = meals.value.filter(({ unusable, inferred }) => !inferred && unusable[0] === reason).length;
      return n === 0 ? [] : [speaker.say(`pages.aroundNotes.reasons.${reason}`, { count: count(n) })];
    });
    if (setApart.length > 0)
      lines.push(
        speaker.say('pages.aroundNotes.setApart', {
          meals: count(meals.value.filter(({ inferred }) => !inferred).length),
          usable: count(meals.n),
          reasons: word(setApart.join(', ')),
        }),
      );
  }
  const few = comparisons.value.some(({ verdict }) => verdict === 'too-few');
  const { allDays, days } = analysis.timeline;
  if (few && allDays.length > days.length)
    lines.push(speaker.say('pages.aroundNotes.moreDays', { all: count(allDays.length) }));
  return [
    heading(2, speaker.say('pages.aroundNotes.compared')),
    table(listed, context),
    paragraph(lines.join(' '), 'small'),
  ];
}

function table(listed: readonly Comparison[], context: PageContext): Block {
  const { speaker } = context;
  const title = (column: 'what' | 'first' | 'second' | 'difference' | 'verdict') =>
    speaker.say(`pages.aroundNotes.${column}`);
  return denseTable(
    speaker.say('pages.aroundNotes.comparedCaption'),
    columnsOf(title, ['what', 0.33], ['first', 0.17], ['second', 0.17], ['difference', 0.19], ['verdict', 0.14]),
    listed.map((one): Cell[] => [
      { text: question(one, context) },
      { text: side(one.a, one, context) },
      { text: side(one.b, one, context) },
      { text: difference(one, context), muted: true },
      {
        text: speaker.say(`pages.aroundNotes.verdicts.${one.verdict}`),
        strong: one.verdict === 'hint',
        muted: one.verdict !== 'hint',
      },
    ]),
  );
}

function question({ id, slot, grams, fromMinute, a, b }: Comparison, { speaker }: PageContext): string {
  return speaker.say(`pages.aroundNotes.questions.${id}`, {
    slot: word(slot ?? 'any'),
    grams: word(grams === null ? '' : speaker.number(grams, 0)),
    first: word(a.name),
    second: word(b.name),
    from: { q: 'clock', value: fromMinute ?? 0 },
    ...SIX,
  });
}

function side({ n, median, low, high, leftOut }: Side, { of, verdict }: Comparison, context: PageContext): string {
  const { speaker } = context;
  if (median === null || low === null || high === null || verdict === 'too-few')
    return speaker.say('pages.aroundNotes.cellFew', { n: count(n), leftOut: count(leftOut) });
  return speaker.say('pages.aroundNotes.cell', {
    n: count(n),
    leftOut: count(leftOut),
    median: word(value(median, of, context)),
    low: word(value(low, of, context)),
    high: word(value(high, of, context)),
  });
}

/** Bare numbers: the unit stands in the words of the question. */
function value(number: number, of: Comparison['of'], { speaker }: PageContext): string {
  if (of === 'high-minutes') return speaker.number(number, 0);
  return speaker.value(
    of === 'lowest' ? { q: 'glucose', value: number as never } : { q: 'rise', value: number },
    'short',
  );
}

function difference({ difference, of }: Comparison, context: PageContext): string {
  if (difference === null) return '–';
  const { speaker } = context;
  const one = (number: number) =>
    of === 'high-minutes' ? speaker.number(number, 0) : speaker.value({ q: 'rise', value: number }, 'short');
  return speaker.say('pages.aroundNotes.range', {
    value: word(one(difference.value)),
    low: word(one(difference.low)),
    high: word(one(difference.high)),
  });
}
