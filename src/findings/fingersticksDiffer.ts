import { SWITCH } from '../measures/fingersticks.ts';
import type { MgPerDl } from '../model/glucose.ts';
import type { Quantity } from '../model/quantity.ts';
import type { StickPair } from '../model/trust.ts';
import { count, glucose, rise, share, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, quiet, untold } from './finding.ts';

const LEAST_PAIRS = 3;
const LEAST_WITHIN = 0.8;
const NEAR = 20;

/**
 * Fewer than four in five fingersticks lie within 20 mg/dL (below 100) or 20 % of the sensor, or one pair lies in zone C or
 * beyond of the consensus grid. Few pairs, and a fingerstick errs too: a question, not a verdict.
 */
export const fingersticksDiffer: Finding<'fingersticks-differ'> = {
  id: 'fingersticks-differ',
  source: '20/20 and the limit of 80 % ours; zones: Parkes 2000, Diabetes Care 23:1143-1148 (borders from memory)',
  look({ fingersticks }) {
    if (!fingersticks.ok) return fingersticks.why === 'no-pairs' ? absent : quiet(fingersticks.why);
    const { pairs, within20, zones, bias, mard } = fingersticks.value;
    const far = zones.C + zones.D + zones.E;
    if (far === 0 && pairs.length < LEAST_PAIRS) return untold('too-few-readings');
    if (far === 0 && within20 >= LEAST_WITHIN) return absent;
    return holds(
      {
        pairs: count(pairs.length),
        within: count(Math.round(within20 * pairs.length)),
        far: count(far),
        side: word(bias < 0 ? 'below' : 'above'),
        bias: rise(Math.abs(bias)),
        ...bothWays(pairs),
        mard: share(mard),
        near: rise(NEAR),
        switch: glucose(SWITCH as MgPerDl),
      },
      pairs.filter(isApart).map(({ date }) => ({ date })),
    );
  },
};

/** The furthest differences below and above, where there are both: an average of opposites says little. */
function bothWays(pairs: readonly StickPair[]): Record<'mixed' | 'furthestBelow' | 'furthestAbove', Quantity> {
  const differences = pairs.map(({ finger, sensor }) => sensor - finger);
  const [below, above] = [Math.min(...differences), Math.max(...differences)];
  return {
    mixed: word(below < 0 && above > 0 ? 'yes' : 'no'),
    furthestBelow: rise(Math.max(0, -below)),
    furthestAbove: rise(Math.max(0, above)),
  };
}

/** As in `within20`. Pairs in zone C and beyond are all so far apart. */
const isApart = ({ finger, sensor }: StickPair): boolean =>
  Math.abs(sensor - finger) > (finger < SWITCH ? NEAR : (NEAR * finger) / 100);
