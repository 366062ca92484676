import type { Medicine } from '../model/trust.ts';
import { WrongUse } from './exits.ts';
import { ownPath } from './home.ts';
import { ownJson } from './json.ts';

const PATH = 'templates/medicines.json';

/** The medicines to look for in notes: a list in templates, for a clinic to edit. */
export function medicines(): Medicine[] {
  const { medicines: list } = (ownJson(PATH, 'wrongMedicines') ?? {}) as { medicines?: unknown };
  if (Array.isArray(list) && list.every(isMedicine)) return list;
  throw new WrongUse('wrongMedicines', { path: ownPath(PATH), problem: 'medicines: id, words, source' });
}

function isMedicine(one: unknown): one is Medicine {
  if (typeof one !== 'object' || one === null) return false;
  const { id, words, source } = one as Record<string, unknown>;
  const isText = (text: unknown): boolean => typeof text === 'string' && text.trim() !== '';
  return isText(id) && isText(source) && Array.isArray(words) && words.length > 0 && words.every(isText);
}
