import { changesChart } from '../charts/changes.ts';
import { SMALLEST } from '../comparing/thenAndNow.ts';
import type { MgPerDl } from '../model/glucose.ts';
import type { Block, Cell } from '../model/report.ts';
import type { Band } from '../model/targets.ts';
import type { Change, Compared, PeriodFacts, ThenAndNow } from '../model/thenAndNow.ts';
import type { Below, ParamsOf } from '../model/words.ts';
import { BANDS } from '../targets/bands.ts';
import { limitsOf } from './bandsTable.ts';
import {
  columnsOf,
  count,
  denseTable,
  heading,
  type PageContext,
  type PageMaker,
  paragraph,
  tellAll,
  word,
  yearOf,
} from './context.ts';

export const isShare = (of: Compared): of is Band => BANDS.some((band) => band === of);

/**
 * Two periods side by side, each change with its interval and a verdict. Only when a comparison was asked for; one that
 * cannot be made stands among what could not be told, with the reason.
 */
export const thenAndNow: PageMaker = (context) => {
  const { speaker, analysis } = context;
  const found = analysis.measures.thenAndNow;
  if (!found.ok) return null;
  const title = speaker.say('pages.thenAndNow.title');
  const { value } = found;
  const blocks: Block[] = [heading(1, title)];
  const shares = value.changes.filter(({ of }) => isShare(of));
  blocks.push(
    ...about(context, value),
    ...tellAll(context, ['changed-lows', 'goals-then-and-now', 'changed-range', 'change-not-told']).map((line) =>
      paragraph(line, 'strong'),
    ),
  );
  if (shares.some(({ low }) => low !== null))
    blocks.push({
      kind: 'chart',
      title: speaker.say('pages.thenAndNow.chart'),
      drawing: changesChart(shares, (change) => nameOfChange(change, context), context.chart),
    });
  blocks.push(
    table(context, value),
    paragraph(
      speaker.say('pages.thenAndNow.read', {
        mean: { q: 'rise', value: SMALLEST.mean },
        all: count(value.changes.length),
      }),
      'small',
    ),
  );
  return { id: 'then-and-now', title, blocks };
};

function about({ speaker }: PageContext, value: ThenAndNow): Block[] {
  const period = ({ from, to, days, fullDays, share, sensors }: PeriodFacts): ParamsOf<'pages.thenAndNow.now'> => ({
    from: word(speaker.value({ q: 'date', value: from }, yearOf(from, to))),
    to: word(speaker.value({ q: 'date', value: to }, 'dated')),
    days: count(days),
    full: count(fullDays),
    share: { q: 'share', value: share },
    sensors: count(sensors),
  });
  const { before, now, sharedDays } = value;
  const items = [
    speaker.say('pages.thenAndNow.before', period(before)),
    speaker.say('pages.thenAndNow.now', period(now)),
    ...value.differs.map((what) =>
      speaker.say(`pages.thenAndNow.differs.${what}`, {
        before: { q: 'minutes', value: before.interval },
        now: { q: 'minutes', value: now.interval },
      }),
    ),
  ];
  if (sharedDays > 0) items.push(speaker.say('pages.thenAndNow.sharedDays', { days: count(sharedDays) }));
  return [
    paragraph(speaker.say(`pages.thenAndNow.with.${value.with}`, { text: word(value.text) })),
    { kind: 'list', items, ordered: false },
  ];
}

function table(context: PageContext, { changes }: ThenAndNow): Block {
  const { speaker } = context;
  const title = (column: Below<'pages.thenAndNow.columns'>) => speaker.say(`pages.thenAndNow.columns.${column}`);
  return denseTable(
    speaker.say('pages.thenAndNow.tableCaption'),
    columnsOf(
      title,
      ['number', 0.25],
      ['before', 0.11],
      ['now', 0.11],
      ['change', 0.12],
      ['interval', 0.17],
      ['verdict', 0.24, 'words'],
    ),
    changes.map((change) => row(change, context)),
  );
}

function row(change: Change, context: PageContext): Cell[] {
  const { speaker } = context;
  const { low, high, verdict, why } = change;
  const moreThanNoise = verdict === 'more-than-noise';
  const sure = low !== null && high !== null && (low > 0 || high < 0);
  const key =
    verdict === 'cannot-tell' ? (`cannotTell.${why!}` as const) : moreThanNoise ? 'told' : sure ? 'small' : 'notTold';
  return [
    { text: nameOfChange(change, context), strong: moreThanNoise },
    { text: amountOf(change, change.before, context) },
    { text: amountOf(change, change.now, context) },
    { text: signed(change, change.change, context), strong: moreThanNoise },
    {
      text:
        low === null || high === null
          ? '–'
          : speaker.say('pages.bandsTable.range', {
              low: word(signed(change, low, context)),
              high: word(signed(change, high, context)),
            }),
      muted: true,
    },
    {
      text: speaker.say(`pages.thenAndNow.verdict.${key}`, {
        smallest: word(signed(change, change.smallest, context).slice(1)),
      }),
      strong: moreThanNoise,
    },
  ];
}

export function nameOfChange({ of }: Change, { speaker }: PageContext): string {
  return isShare(of)
    ? speaker.say(`pages.thenAndNow.of.${of}`, limitsOf(of, speaker))
    : speaker.say(`pages.thenAndNow.of.${of}`);
}

export function amountOf({ of }: Change, value: number, { speaker }: PageContext): string {
  if (isShare(of)) return speaker.value({ q: 'share', value });
  if (of === 'mean') return speaker.value({ q: 'glucose', value: value as MgPerDl }, 'short');
  return speaker.number(value, 1);
}

/** With its sign; shares in points of a hundred. */
function signed({ of }: Change, value: number, { speaker }: PageContext): string {
  const size = Math.abs(value);
  const text =
    of === 'mean'
      ? speaker.value({ q: 'rise', value: size }, 'short')
      : speaker.number(isShare(of) ? size * 100 : size, 1);
  return `${value < 0 ? '\u2212' : '+'}${text}`;
}
