import { accounting } from './accounting.ts';
import { aroundNotes } from './aroundNotes.ts';
import type { PageContext, PageMaker } from './context.ts';
import { dayStrips } from './dayStrips.ts';
import { indicesAnnex } from './indicesAnnex.ts';
import { interpretation } from './interpretation.ts';
import { patientBack, patientSafe } from './person/back.ts';
import { patientFront, patientLows } from './person/front.ts';
import { sensorTrust } from './sensorTrust.ts';
import { standsOut } from './standsOut.ts';
import { thenAndNow } from './thenAndNow.ts';
import { usualDay } from './usualDay.ts';
import { agreeing } from './visit/agreeing.ts';
import { singleDays } from './visit/days.ts';
import { isThin } from './visit/layout.ts';
import { remarksSheet } from './visit/remarks.ts';
import { safety } from './visit/safety.ts';
import { usualDaySide } from './visit/usualDay.ts';
import { writtenSheet } from './visit/written.ts';
import { visitByVisit } from './visitByVisit.ts';

export { type TopicChoice, topicChoices } from './choices.ts';
export type { PageContext } from './context.ts';
export { contextOf } from './contextOf.ts';
export { interpretationSentences } from './interpretationSentences.ts';
export { methodPage } from './method.ts';
export { oneDay } from './oneDay.ts';
export { REMARKS, remarksApart } from './visit/remarks.ts';

/** What is made of one analysis: the two papers that everyone gets, what is added on request, and the draft to paste. */
export type PaperOf = 'clinic' | 'patient' | 'further' | 'draft';

/** The pages of each paper, in order of print; a page that has nothing to say is left out. */
export function pagesOf(paper: PaperOf, context: PageContext): readonly PageMaker[] {
  if (paper !== 'clinic') return PAGES[paper];
  // Two sheets, printed on both sides; one where there is little to look at.
  return isThin(context)
    ? [safety, agreeing, remarksSheet, writtenSheet]
    : [safety, usualDaySide, singleDays, agreeing, remarksSheet, writtenSheet];
}

const PAGES: Record<Exclude<PaperOf, 'clinic'>, readonly PageMaker[]> = {
  // One sheet; two in large print.
  patient: [patientFront, patientLows, patientBack, patientSafe],
  further: [
    standsOut,
    usualDay,
    dayStrips,
    aroundNotes,
    thenAndNow,
    visitByVisit,
    sensorTrust,
    accounting,
    indicesAnnex,
  ],
  draft: [interpretation],
};
