import type { MgPerDl } from '../model/glucose.ts';
import type { Block, Cell } from '../model/report.ts';
import { type PageContext, word } from './context.ts';

type Curve = 'p75' | 'p50' | 'p25';

/** How sure the curves of the usual day are, as a small table: no shading is added to bands that already mean something. */
export function curveTable({ speaker, analysis }: PageContext, curves: readonly Curve[]): Block[] {
  const { curveRanges } = analysis.measures;
  if (!curveRanges.ok) return [];
  const { value } = curveRanges;
  const titles = value.map(({ minute }) => speaker.value({ q: 'clock', value: minute }, 'short'));
  // Room for a range, or for a longer name of midnight.
  const letters = titles.map((title) => Math.max(9, title.length + 1));
  const width = (at: number) => (0.87 * letters[at]!) / letters.reduce((sum, one) => sum + one, 0);
  const bare = (mgdl: number) => word(speaker.value({ q: 'glucose', value: mgdl as MgPerDl }, 'short'));
  const row = (curve: Curve): Cell[] => [
    { text: speaker.say(`pages.curveTable.${curve}`) },
    ...value.map((at) => ({
      // On one line, or two ranges beside one another are hard to tell apart.
      text: speaker
        .say('pages.bandsTable.range', { low: bare(at[curve].low), high: bare(at[curve].high) })
        .replaceAll(' ', '\u00a0'),
    })),
  ];
  return [
    {
      kind: 'table',
      caption: speaker.say('pages.curveTable.caption', { unit: word(speaker.unit) }),
      captionShown: curves.length > 1,
      dense: true,
      columns: [
        { title: speaker.say('pages.curveTable.curve'), align: 'start', width: 0.13 },
        ...titles.map((title, at) => ({ title, align: 'end' as const, width: width(at) })),
      ],
      rows: curves.map(row),
    },
  ];
}
