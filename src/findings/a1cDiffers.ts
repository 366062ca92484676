import { boundWay } from './evidence/bound.ts';
import { glucose, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, quiet, untold } from './finding.ts';

const LEAST = 0.5;

/** A laboratory A1C and the GMI lie half a point or more apart: said, never averaged away. */
export const a1cDiffers: Finding<'a1c-differs'> = {
  id: 'a1c-differs',
  source: 'that they may differ: Bergenstal 2018, Diabetes Care 41:2275-2280; 0.5 points: ours',
  look({ labA1c, gmi: indicator, mean: sensor }) {
    if (!labA1c.ok) return quiet(labA1c.why);
    const { percent, gmi, difference, eag, mean } = labA1c.value;
    // Without a GMI for its own reason: too few hours, or targets for which it was not made.
    if (gmi === null || difference === null || mean === null) return untold(indicator.ok ? 'failed' : indicator.why);
    // Compared as printed by a laboratory, to one decimal: 7.0 and 7.5 are half a point apart, whatever the rounding.
    if (Math.abs(difference) < LEAST - 1e-9) return absent;
    // A mean of "at least" can be nearer to an A1C above it than it looks.
    const bound = sensor.ok ? sensor.value.bound : null;
    const nearer = bound === 'both' || bound === (difference < 0 ? 'lower' : 'upper');
    return holds(
      {
        way: boundWay({ mean: sensor }),
        nearer: word(nearer ? 'yes' : 'no'),
        side: word(difference < 0 ? 'above' : 'below'),
        a1c: { q: 'percent', value: percent },
        gmi: { q: 'percent', value: gmi },
        eag: glucose(eag),
        mean: glucose(mean),
      },
      [],
      difference < 0 ? 'above' : 'below',
    );
  },
};
