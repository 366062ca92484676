import type { GlucoseUnit } from '../model/glucose.ts';
import type { TargetSet } from '../model/targets.ts';
import type { WordParams } from '../model/wordParams.ts';
import type { ParamsOf, WordKey } from '../model/words.ts';
import type { LocaleForms } from './locale.ts';

/** What plural and select arms look at, where it is not the text. */
type Choices<K extends WordKey> = Partial<Record<WordParams[K], string | number>>;

/** Everything a quantity needs to become text. `fill` finds the pattern, e.g. `units.percent`. */
export interface Telling {
  forms: LocaleForms;
  unit: GlucoseUnit;
  voice: 'clinic' | 'patient';
  targets: TargetSet;
  /** Sides on which the files tell of readings beyond the sensor without naming its limit. */
  unnamed: { below: boolean; above: boolean };
  fill<K extends WordKey>(key: K, texts: ParamsOf<K, string>, choices?: Choices<K>): string;
}
