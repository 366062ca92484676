import { absent, type Finding, holds, untold } from './finding.ts';
import { noteLogLike } from './occasionExamples.ts';
import { isRepeated } from './pattern.ts';
import { count } from './quantities.ts';

/** Food notes made while glucose was already rising, so that times around them may be off. */
export const lateNotes: Finding = {
  id: 'late-notes',
  source: 'ours',
  look({ noteLog }) {
    if (!noteLog.ok) return untold(noteLog.why);
    const { meals, late } = noteLog.value;
    if (meals < 3) return untold('too-few-occasions');
    return isRepeated(late, meals) ? holds({ count: count(late), of: count(meals) }, []) : absent;
  },
  examples: [
    ['3 of 9 notes', { noteLog: noteLogLike({ meals: 9, late: 3 }) }, 'holds'],
    ['3 of 10 notes', { noteLog: noteLogLike({ meals: 10, late: 3 }) }, 'absent'],
    ['2 notes', { noteLog: noteLogLike({ meals: 2, late: 2 }) }, 'untold'],
  ],
};
