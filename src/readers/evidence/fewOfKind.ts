import type { Column } from '../table/header.ts';
import { conceptsOf, tokens } from '../table/vocabulary.ts';
import { isSmooth } from './curve.ts';
import { type Group, mainGroup } from './groups.ts';

/** Fewer values under a word than this are looked at one by one; where other words are known, they are set aside and told (ours). */
export const FEW = 3;

/**
 * Whether the words stand here and there beside readings that are as good as the others: remarks. A row of another kind leaves the
 * curve or comes between.
 */
export function besideReadings(groups: Group[], column: Column, shared: boolean): boolean {
  const main = mainGroup(groups);
  if (shared || column.given || column.role !== 'kind' || main?.word !== '' || !isSmooth(main.curve)) return false;
  return groups.every(
    (group) =>
      group === main || (group.curve.n === group.rows && group.verdict === 'same' && group.odd + group.unjudged === 0),
  );
}

/**
 * Whether a word with one or two values may be another kind of row. Under a header that promises kinds it may, unless nothing but
 * these rows has a word and they lie on the curve as readings do; elsewhere where a value of it cannot be a reading.
 */
export function hasOddFew(groups: Group[], column: Column, shared: boolean): boolean {
  const main = mainGroup(groups);
  const other = !shared && conceptsOf(tokens(column.name)).has('other');
  return groups.some((group) => {
    if (group === main || group.curve.n === 0 || group.curve.n >= FEW) return false;
    if (column.role === 'kind' && main && main.word !== '' && group.word !== '') return true;
    if (column.role === 'kind' || shared) return group.odd + group.unjudged > 0;
    return (other ? group.far : group.odd) > 0;
  });
}
