import { boundWay } from './evidence/bound.ts';
import { share } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/** The coefficient of variation is above what the consensus calls stable; flagged only when the unrounded value is. */
export const cvOverLimit: Finding<'cv-over-limit'> = {
  id: 'cv-over-limit',
  source: 'Battelino 2019, Diabetes Care 42:1593-1603 (36 % or less)',
  look({ cv, mean }, { cvLimit }) {
    if (cvLimit === null) return untold('not-for-these-targets');
    if (!cv.ok) return untold(cv.why);
    if (cv.value <= cvLimit) return absent;
    return holds(
      { way: boundWay({ mean }), cv: share(cv.value / 100, cvLimit / 100), limit: share(cvLimit / 100) },
      [],
    );
  },
};
