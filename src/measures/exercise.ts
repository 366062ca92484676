import { FIRST, LONG, ONE_SESSION, SHORTEST, SOON } from '../occasions/sessions.ts';
import type { Measure } from './measure.ts';

/** Exercise notes with what glucose did while they lasted, soon after, and in the night that followed. */
export const exercise: Measure<'exercise'> = {
  id: 'exercise',
  source: '{night-after}: McMahon 2007, J Clin Endocrinol Metab 92:963-968; Daybands',
  needs: { readings: 1 },
  definition: {
    oneSessionMinutes: ONE_SESSION,
    shortestMinutes: SHORTEST,
    shortestOfDeviceMinutes: LONG,
    foodFirstMinutes: FIRST,
    soonMinutes: SOON,
  },
  compute(shared) {
    const value = shared.occasions().sessions;
    return { ok: true, value, n: value.length, of: 'occasions' };
  },
};
