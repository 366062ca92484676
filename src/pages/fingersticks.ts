import { errorGridChart, pairsTable } from '../charts/errorGrid.ts';
import type { Block, Cell } from '../model/report.ts';
import type { Fingersticks } from '../model/trust.ts';
import type { Below } from '../model/words.ts';
import { caution, count, denseTable, heading, type PageContext, paragraph, word } from './context.ts';

/** With fewer, each pair is shown as it is: a mean of two says less than the two. */
const LEAST_FOR_FIGURES = 3;

/** Fingersticks that were noted, each beside the reading nearest in time: figures, and the grid when there is a pair. */
export function fingerstickBlocks(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const { fingersticks } = analysis.measures;
  const title = heading(2, speaker.say('pages.fingersticks.title'));
  if (!fingersticks.ok)
    return [
      title,
      paragraph(speaker.say(`pages.fingersticks.none.${fingersticks.why === 'no-pairs' ? 'noPairs' : 'noted'}`)),
    ];
  const { value } = fingersticks;
  return [
    title,
    paragraph(
      speaker.say('pages.fingersticks.sentence', {
        noted: count(value.noted),
        pairs: count(value.pairs.length),
        alone: count(value.alone),
      }),
    ),
    ...(value.pairs.length < LEAST_FOR_FIGURES
      ? [fewPairs(value, context)]
      : [
          {
            kind: 'columns' as const,
            widths: [0.5, 0.5],
            columns: [
              [figures(value, context)],
              [{ kind: 'chart' as const, drawing: errorGridChart(value, context.chart) }],
            ],
          },
          paragraph(speaker.say('pages.fingersticks.grid'), 'small'),
        ]),
    caution(context, 'C4'),
  ];
}

function figures(value: Fingersticks, { speaker }: PageContext): Block {
  const share = (one: number) => speaker.value({ q: 'share', value: one });
  const side = (one: number, text: string) => `${one < 0 ? '\u2212' : '+'}${text}`;
  const rows: [Below<'pages.fingersticks.rows'>, string][] = [
    ['mard', share(value.mard)],
    ['medianArd', share(value.medianArd)],
    ['bias', side(value.bias, speaker.value({ q: 'rise', value: Math.abs(value.bias) }, 'short'))],
    ['relativeBias', side(value.relativeBias, share(Math.abs(value.relativeBias)))],
    ['mad', speaker.value({ q: 'rise', value: value.mad }, 'short')],
    ['within15', share(value.within15)],
    ['within20', share(value.within20)],
    ['zones', `${value.zones.A} + ${value.zones.B}`],
    ['beyond', speaker.number(value.zones.C + value.zones.D + value.zones.E, 0)],
  ];
  const { afterFirstDay } = value;
  if (afterFirstDay) rows.push(['afterFirstDay', `${share(afterFirstDay.mard)} (${afterFirstDay.pairs})`]);
  return denseTable(
    speaker.say('pages.fingersticks.title'),
    [
      { title: speaker.say('pages.fingersticks.figure'), align: 'start', width: 0.7 },
      { title: speaker.say('pages.fingersticks.value'), align: 'end', width: 0.3 },
    ],
    rows.map(([key, text]): Cell[] => [
      {
        text: speaker.say(`pages.fingersticks.rows.${key}`, {
          unit: word(speaker.unit),
          near: { q: 'rise', value: key === 'within15' ? 15 : 20 },
        }),
      },
      { text, strong: true },
    ]),
  );
}

function fewPairs({ pairs }: Fingersticks, context: PageContext): Block {
  const { columns, rows } = pairsTable(pairs, context);
  const widths = [0.4, 0.22, 0.22, 0.16];
  return denseTable(
    context.speaker.say('pages.fingersticks.title'),
    columns.map((title, i) => ({ title, align: i === 0 ? 'start' : 'end', width: widths[i]! })),
    rows.map((row) => row.map((text): Cell => ({ text }))),
  );
}
