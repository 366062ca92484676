import type { LogWords } from '../model/logbook.ts';
import { isRecord } from './checks.ts';

/**
 * Checks the content of a file of logbook words, as a clinic may have edited it. By hand: the file is read at every
 * start, and loading zod would cost more than all the rest of it. Tells each place that does not fit.
 */
export function checkLogWords(content: unknown): { words: LogWords } | { problems: string[] } {
  if (!isRecord(content)) return { problems: ['{ }'] };
  const { about: _, ...given } = content;
  const known = ['amounts', 'joins', 'plurals', 'foods', 'meals', 'treatsLow', 'effort', 'longActing'];
  const problems = Object.keys(given).filter((name) => !known.includes(name));
  for (const name of ['amounts', 'joins', 'treatsLow', 'longActing']) if (!isWords(given[name])) problems.push(name);
  for (const name of ['foods', 'meals', 'effort']) {
    const lists = given[name];
    if (!isRecord(lists) || !Object.values(lists).every(isWords)) problems.push(name);
  }
  const { effort, meals, plurals } = given;
  if (isRecord(effort)) for (const name of ['light', 'hard']) if (!(name in effort)) problems.push(`effort.${name}`);
  if (isRecord(meals)) problems.push(...Object.keys(meals).filter((name) => !SLOTS.includes(name)));
  if (!Array.isArray(plurals) || !plurals.every((pair) => isWords(pair) && pair.length === 2)) problems.push('plurals');
  return problems.length > 0 ? { problems } : { words: given as unknown as LogWords };
}

const SLOTS = ['morning', 'midday', 'afternoon', 'evening', 'night', 'snack'];

const isWords = (value: unknown): value is string[] =>
  Array.isArray(value) && value.every((one) => typeof one === 'string');
