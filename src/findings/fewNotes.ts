import { count } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

const ENOUGH = 0.7;

/** Notes on fewer than 70 % of days. What is not written down may still have happened. */
export const fewNotes: Finding<'few-notes'> = {
  id: 'few-notes',
  source: 'ours',
  look({ noteLog }) {
    if (!noteLog.ok) return untold(noteLog.why);
    const { days, noted } = noteLog.value;
    if (days === 0) return untold('too-few-days');
    return noted / days < ENOUGH ? holds({ days: count(days), noted: count(noted) }, []) : absent;
  },
};
