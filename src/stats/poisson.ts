import { ln } from './elementary.ts';
/**
 * Upper end of the exact interval of a Poisson mean when nothing was counted (Garwood 1936, Biometrika 28:437-442):
 * -ln((1 - level) / 2), 3.69 at 95 %.
 */
export function noneCountedUpper(level: number): number {
  return -ln((1 - level) / 2);
}
