import { readFileSync } from 'node:fs';
import { type Speaker, speakerOf } from '../../src/language/index.ts';
import type { GlucoseUnit } from '../../src/model/glucose.ts';
import { targetSets } from '../../src/targets/index.ts';

/** The English words as the door reads them. */
export const english = JSON.parse(readFileSync(new URL('../../templates/words/en.json', import.meta.url), 'utf8'));

export function englishSpeaker(voice: 'clinic' | 'patient', unit: GlucoseUnit = 'mg/dL'): Speaker {
  return speakerOf(english, { unit, voice, targets: targetSets.adult });
}
