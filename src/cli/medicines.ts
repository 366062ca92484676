import type { Medicine } from '../model/trust.ts';
import { once } from '../once.ts';
import { checkMedicines } from '../schemas/medicines.ts';
import { WrongUse } from './exits.ts';
import { ownPath } from './home.ts';
import { ownJson } from './json.ts';

const PATH = 'templates/medicines.json';

/** The medicines to look for in notes: a list in templates, for a clinic to edit. */
export const medicines = once((): Medicine[] => {
  const list = checkMedicines(ownJson(PATH, 'wrongMedicines'));
  if (list) return list;
  throw new WrongUse('wrongMedicines', { path: ownPath(PATH), problem: 'medicines: id, words, source' });
});
