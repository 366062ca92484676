import { listSpeaker } from '../../clinic/lists.ts';
import type { Said } from '../../model/clinic.ts';
import { words } from '../home.ts';

let voice: ReturnType<typeof listSpeaker> | undefined;

/** Whether there are words for a thing to say, and everything they need is there. */
export function sayable(said: Said): boolean {
  voice ??= listSpeaker(words('en'));
  try {
    voice.repeat(said);
    return true;
  } catch {
    return false;
  }
}
