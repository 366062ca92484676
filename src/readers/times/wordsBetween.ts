import { plain } from '../table/vocabulary.ts';
import { halfOf } from './halfWords.ts';

/** `At`, `o'clock`, `of the year` and short weekdays, as languages put them between a date and its clock. From memory. */
const WORDS = new Set(
  `at um a as alle ore om kl klo kell o ob u r g в г ve saat ora las la les
   mo di mi do fr sa so mon tue wed thu fri sat sun lun mar mie jue vie sab dom mer jeu ven sam dim gio lon tor fre sor man tir ons lor son
   ma ti ke to pe la su pon wto sro czw pia nie пн вт ср чт пт сб вс`
    .split(/\s+/)
    .map(plain),
);
const IN_BRACKETS = /^\(.{1,6}\)$/u;

/**
 * The half of the day that stands between a date and its clock, 0 when only known words do. Undefined for a word that is not
 * known: it may be a half, and a time half a day off would be worse than one that cannot be read.
 */
export function halfBetween(text: string): 0 | 1 | 2 | undefined {
  let found: 0 | 1 | 2 = 0;
  for (const piece of text.split(/[\s\u00a0\u202f,;T_-]+/u)) {
    if (piece === '' || /^[.:]+$/.test(piece)) continue;
    const half = halfOf(piece.replace(/[()]/g, ''));
    if (half !== 0) found = half;
    else if (!WORDS.has(plain(piece).replaceAll('.', '')) && !IN_BRACKETS.test(piece)) return undefined;
  }
  return found;
}
