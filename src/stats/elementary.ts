/*
 * What engines work out each in its own way, and not to the same last digit: taken from a library that uses + - * / and
 * the square root only, which IEEE 754 fixes to the last bit. So the same readings give the same file in every engine.
 * tests/floors.test.ts keeps the engine's own out of every other file.
 */
export { default as atan } from '@stdlib/math-base-special-atan';
export { default as exp } from '@stdlib/math-base-special-exp';
export { default as ln } from '@stdlib/math-base-special-ln';
export { default as log10 } from '@stdlib/math-base-special-log10';
export { default as pow } from '@stdlib/math-base-special-pow';

export function square(x: number): number {
  return x * x;
}
