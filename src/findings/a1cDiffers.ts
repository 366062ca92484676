import { absent, type Finding, holds, quiet, untold } from './finding.ts';
import { glucose, word } from './quantities.ts';
import { a1cLike } from './trustExamples.ts';

const LEAST = 0.5;

/** A laboratory A1C and the GMI lie half a point or more apart: said, never averaged away. */
export const a1cDiffers: Finding = {
  id: 'a1c-differs',
  source: 'that they may differ: Bergenstal 2018, Diabetes Care 41:2275-2280; 0.5 points: ours',
  look({ labA1c, gmi: indicator }) {
    if (!labA1c.ok) return quiet(labA1c.why);
    const { percent, gmi, apart, eag, mean } = labA1c.value;
    // Without a GMI for its own reason: too few hours, or targets for which it was not made.
    if (gmi === null || apart === null || mean === null) return untold(indicator.ok ? 'failed' : indicator.why);
    // Compared as printed by a laboratory, to one decimal: 7.0 and 7.5 are half a point apart, whatever the rounding.
    if (Math.abs(apart) < LEAST - 1e-9) return absent;
    return holds(
      {
        side: word(apart < 0 ? 'above' : 'below'),
        a1c: { q: 'percent', value: percent },
        gmi: { q: 'percent', value: gmi },
        eag: glucose(eag),
        mean: glucose(mean),
      },
      [],
      apart < 0 ? 'above' : 'below',
    );
  },
  examples: [
    ['half a point apart', { labA1c: a1cLike(7.5, 7.0) }, 'holds'],
    ['0.4 apart', { labA1c: a1cLike(7.4, 7.0) }, 'absent'],
    [
      'no GMI for these targets',
      { labA1c: a1cLike(7.4, null), gmi: { ok: false, why: 'not-for-these-targets' } },
      'untold',
    ],
    ['none typed in', { labA1c: { ok: false, why: 'not-asked' } }, 'absent'],
  ],
};
