import type { NoteKind } from '../../model/input.ts';
import { onceUpTo } from '../../once.ts';
import { isRate } from '../table/phrases.ts';
import { conceptsOf, tokens } from '../table/vocabulary.ts';
import { isNutrient } from './nutrients.ts';

/** What a word in a record-kind column says the row is about. */
export type RowKind = NoteKind | 'reading' | 'glucose' | 'nutrient';

/** Kinds are few; a column of free text is not. */
const meaningOf = onceUpTo(2000, meaning);

/** The kind a cell such as "Sensor glucose", "Rapid insulin" or "Meal" names; undefined when it names none. */
export function rowKind(text: string): RowKind | undefined {
  return meaningOf(text) || undefined;
}

function meaning(text: string): RowKind | '' {
  if (text.length > 60) return '';
  const words = tokens(text);
  const has = conceptsOf(words);
  // Before all else: a suspension names no insulin and ends no meal.
  if (isRate(words) && (has.has('insulin') || words.some((word) => /^(?:suspen|pump|delivery)/.test(word))))
    return 'insulin-rate';
  if (has.has('calibration')) return 'calibration';
  if (has.has('alarm')) return 'alarm';
  if (has.has('carbohydrate')) return 'meal';
  // Grams of protein are no carbohydrate.
  if (isNutrient(text)) return 'nutrient';
  if (has.has('food')) return 'meal';
  if (has.has('fingerstick')) return 'fingerstick';
  if (has.has('insulin') || has.has('bolus')) return 'insulin';
  if (has.has('exercise')) return 'exercise';
  if (has.has('medication')) return 'medication';
  if (has.has('sensor') && has.has('event')) return 'sensor';
  if (has.has('sensor')) return 'reading';
  if (has.has('glucose')) return 'glucose';
  if (has.has('note')) return 'text';
  return '';
}

const resting = new Map<string, boolean>();

/** Words for sitting still and sleeping, which fill activity columns without being exercise. */
export function isRest(text: string): boolean {
  let rest = resting.get(text);
  if (rest === undefined) {
    rest = text.length <= 60 && conceptsOf(tokens(text)).has('rest');
    if (resting.size < 2000) resting.set(text, rest);
  }
  return rest;
}
