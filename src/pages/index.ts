import { accounting } from './accounting.ts';
import { agreed } from './agreed.ts';
import { aroundNotes } from './aroundNotes.ts';
import type { PageMaker } from './context.ts';
import { dayStrips } from './dayStrips.ts';
import { indicesAnnex } from './indicesAnnex.ts';
import { interpretation } from './interpretation.ts';
import { method } from './method.ts';
import { overview } from './overview.ts';
import { patientBack } from './patientBack.ts';
import { patientFront } from './patientFront.ts';
import { sensorTrust } from './sensorTrust.ts';
import { standsOut } from './standsOut.ts';
import { thenAndNow } from './thenAndNow.ts';
import { usualDay } from './usualDay.ts';

export type { PageContext } from './context.ts';

/** The pages of each paper, in order of print. */
export const pages: Record<'clinic' | 'patient', readonly PageMaker[]> = {
  clinic: [
    overview,
    usualDay,
    standsOut,
    dayStrips,
    aroundNotes,
    thenAndNow,
    sensorTrust,
    interpretation,
    agreed,
    accounting,
    method,
    indicesAnnex,
  ],
  patient: [patientFront, patientBack],
};
