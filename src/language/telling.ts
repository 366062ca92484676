import type { GlucoseUnit } from '../model/glucose.ts';
import type { TargetSet } from '../model/targets.ts';
import type { LocaleForms } from './locale.ts';

/** Everything a quantity needs to become text. `fill` finds the pattern, e.g. `units.percent`. */
export interface Telling {
  forms: LocaleForms;
  unit: GlucoseUnit;
  voice: 'clinic' | 'patient';
  targets: TargetSet;
  fill(key: string, texts: Record<string, string>, choices?: Record<string, string | number>): string;
}
