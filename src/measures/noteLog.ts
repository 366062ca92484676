import type { Measure } from './measure.ts';

/** How many days hold notes, and of what kind: what everything around notes rests on. */
export const noteLog: Measure<'noteLog'> = {
  id: 'noteLog',
  source: 'Daybands',
  needs: {},
  definition: {},
  compute(shared) {
    const { log } = shared.occasions();
    return { ok: true, value: log, n: log.noted, of: 'days' };
  },
};
