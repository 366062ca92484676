import type { Medicine } from '../model/trust.ts';
import { isRecord } from './checks.ts';

/** The list in a file of medicines, as a clinic may have edited it; undefined where it is none. By hand: it is read at every start. */
export function checkMedicines(content: unknown): Medicine[] | undefined {
  const list: unknown = isRecord(content) ? content.medicines : undefined;
  return Array.isArray(list) && list.every(isMedicine) ? list : undefined;
}

function isMedicine(one: unknown): one is Medicine {
  if (!isRecord(one)) return false;
  const { id, words, source } = one;
  const isText = (text: unknown): boolean => typeof text === 'string' && text.trim() !== '';
  return isText(id) && isText(source) && Array.isArray(words) && words.length > 0 && words.every(isText);
}
