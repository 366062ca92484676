import { absent, type Finding, holds, untold } from './finding.ts';
import { noteLogLike } from './occasionExamples.ts';
import { count } from './quantities.ts';

const ENOUGH = 0.7;

/** Notes on fewer than 70 % of days. What is not written down may still have happened. */
export const fewNotes: Finding = {
  id: 'few-notes',
  source: 'ours',
  look({ noteLog }) {
    if (!noteLog.ok) return untold(noteLog.why);
    const { days, noted } = noteLog.value;
    if (days === 0) return untold('too-few-days');
    return noted / days < ENOUGH ? holds({ days: count(days), noted: count(noted) }, []) : absent;
  },
  examples: [
    ['9 of 14 days', { noteLog: noteLogLike({ noted: 9 }) }, 'holds'],
    ['7 of 10 days', { noteLog: noteLogLike({ days: 10, noted: 7 }) }, 'absent'],
    ['none at all', { noteLog: noteLogLike({ noted: 0 }) }, 'holds'],
  ],
};
