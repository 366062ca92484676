import { eagOf, ifccOf, ngspOf } from '../comparing/a1c.ts';
import { mgPerDl } from '../units.ts';
import { hoursSeen } from './coverage.ts';
import { gmiOf, HOURS } from './gmi.ts';
import type { Measure } from './measure.ts';

/**
 * A laboratory A1C that was typed in, with the average glucose that goes with it in the ADAG study, beside the sensor's
 * mean and GMI. The two are never averaged: where they differ, that is what there is to say.
 */
export const labA1c: Measure<'labA1c'> = {
  id: 'labA1c',
  source:
    'Nathan 2008, Diabetes Care 31:1473-1478; ngsp.org ({master-equation}); Bergenstal 2018, Diabetes Care 41:2275-2280',
  needs: {},
  definition: {},
  compute(shared) {
    const { a1c, targets, timeline } = shared;
    if (a1c === null) return { ok: false, why: 'not-asked' };
    const percent = a1c.unit === '%' ? a1c.value : ngspOf(a1c.value);
    const mmolPerMol = a1c.unit === '%' ? ifccOf(a1c.value) : a1c.value;
    const { n, mean } = shared.moments();
    const gmi = targets.gmi && n > 0 && hoursSeen(shared) >= HOURS ? gmiOf(mean) : null;
    return {
      ok: true,
      value: {
        percent,
        mmolPerMol,
        eag: mgPerDl(eagOf(percent)),
        mean: n > 0 ? mgPerDl(mean) : null,
        gmi: gmi?.percent ?? null,
        difference: gmi === null ? null : gmi.percent - percent,
      },
      n: timeline.readings.count,
      of: 'readings',
    };
  },
};
