import type { MgPerDl } from '../model/glucose.ts';
import type { Block, Cell } from '../model/report.ts';
import { type PageContext, word } from './context.ts';

type Curve = 'p75' | 'p50' | 'p25';

/** How sure the curves of the usual day are, as a small table: no shading is added to bands that already mean something. */
export function curveTable({ say, analysis }: PageContext, curves: readonly Curve[]): Block[] {
  const { curveRanges } = analysis.measures;
  if (!curveRanges.ok) return [];
  const { value } = curveRanges;
  const width = 0.9 / value.length;
  const bare = (mgdl: number) => word(say.value({ q: 'glucose', value: mgdl as MgPerDl }, 'short'));
  const row = (curve: Curve): Cell[] => [
    { text: say.say(`pages.curveTable.${curve}`) },
    ...value.map((at) => ({
      text: say.say('pages.bandsTable.range', { low: bare(at[curve].low), high: bare(at[curve].high) }),
    })),
  ];
  return [
    {
      kind: 'table',
      caption: say.say('pages.curveTable.caption', { unit: word(say.unit) }),
      captionShown: curves.length > 1,
      dense: true,
      columns: [
        { title: say.say('pages.curveTable.curve'), align: 'start', width: 1 - width * value.length },
        ...value.map(({ minute }) => ({
          title: say.value({ q: 'clock', value: minute }, 'short'),
          align: 'end' as const,
          width,
        })),
      ],
      rows: curves.map(row),
    },
  ];
}
