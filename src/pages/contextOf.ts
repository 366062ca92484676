import type { Analysis } from '../analyse.ts';
import { speakerOf } from '../language/index.ts';
import type { Readings } from '../model/timeline.ts';
import type { Agreed } from '../model/visits.ts';
import type { PageContext } from './context.ts';

/** Text of charts in points, where it is read at arm's length, at a table, and by those who see little. */
const CHART_TEXT = { clinic: 8.5, patient: 12, large: 17 };

/** What the pages of a paper are filled from: an analysis in the words of one language, in one voice and size. */
export function contextOf(
  analysis: Analysis,
  words: unknown,
  { voice, size, written }: { voice: 'clinic' | 'patient'; size: keyof typeof CHART_TEXT; written: Agreed | null },
): PageContext {
  const { timeline, targets } = analysis;
  const { unit } = timeline;
  const speaker = speakerOf(words, { unit, voice, targets, unnamed: unnamedLimits(timeline.readings) });
  return {
    analysis,
    speaker,
    written,
    chart: { speaker, targets, native: timeline.unit, text: CHART_TEXT[size] },
  };
}

/** Files that say only "low" or "high" name no limit: then none is printed. */
function unnamedLimits({ count, limit, mgdl }: Readings): { below: boolean; above: boolean } {
  const seen = { below: false, above: false };
  const named = { below: false, above: false };
  for (let i = 0; i < count; i++) {
    if (limit[i] === 0) continue;
    const side = limit[i]! < 0 ? 'below' : 'above';
    seen[side] = true;
    if (!Number.isNaN(mgdl[i]!)) named[side] = true;
  }
  return { below: seen.below && !named.below, above: seen.above && !named.above };
}
