import { onceUpTo } from '../../once.ts';
import type { Role } from '../../schemas/layout.ts';
import { isOwnName, type MarkKind, markKindOf } from '../evidence/persons.ts';
import { offsetNamed } from '../evidence/zoneWords.ts';
import { anyUnit, foreignUnit, glucoseUnit, otherUnit, rateUnit } from '../glucose/unit.ts';
import { isNutrient } from '../notes/nutrients.ts';
import { exchangeIn, isEatenTotal } from './exchanges.ts';
import { isDetail, isRate, isTablets } from './phrases.ts';
import { type Concept, conceptsOf, tokens } from './vocabulary.ts';

/** A column and what it means. */
export interface Column {
  index: number;
  /** As written in the file. */
  name: string;
  role: Role;
  /** Unit named by the header. */
  unit?: string;
  /** The header's own word for the kind, e.g. of insulin. Shown as written. */
  label?: string;
  /** Its unit is a real one in which no glucose is read here. */
  foreign?: boolean;
  /** Minutes from world time that its header names for all its times. */
  offset?: number;
  /** Its unit is glucose's and its words are unknown: its values must show what they are. */
  maybe?: boolean;
  /** What of a person it holds. */
  mark?: MarkKind;
  /** Its name is unknown, and its cells alone tell its meaning. */
  seen?: boolean;
  /** Its numbers are glucose and its words notes. */
  mixed?: boolean;
  /** Its meaning and unit are a layout's, not the header's. */
  given?: boolean;
}

/** The unit in brackets, behind a comma, or at the end of the words; with the words left. */
function splitUnit(name: string): { words: string[]; unit?: string } {
  const bracket = /^(.*?)[([{]([^)\]}]*)[)\]}]\s*(.*)$/s.exec(name);
  if (bracket) {
    const unit = anyUnit(bracket[2]!) ?? foreignUnit(bracket[2]!);
    const words = tokens(`${bracket[1]} ${unit ? '' : bracket[2]} ${bracket[3]}`);
    return unit ? { words, unit } : { words };
  }
  const all = tokens(name);
  for (const take of [2, 1]) {
    if (all.length <= take) continue;
    const tail = all.slice(-take);
    const joined = tail.join('/');
    const unit =
      take === 2
        ? (glucoseUnit(joined) ?? foreignUnit(joined) ?? rateUnit(name))
        : (glucoseUnit(joined) ?? shortUnit(joined));
    if (unit) return { words: all.slice(0, -take), unit };
  }
  return { words: all };
}

const NO_TAIL = new Set(['e', 'j', 'unit', 'tablet', 'tablets']);
/** `units` closes many headers without being the unit of the column; single letters only g, u, h, s count. */
function shortUnit(word: string): string | undefined {
  // "Hour" in many languages is the clock's word as well.
  return NO_TAIL.has(word) || conceptsOf([word]).has('time') ? undefined : otherUnit(word);
}

/** Headers are few, but any row of words may be one. */
const namedOf = onceUpTo(2000, (name) => meaningOf(0, name));

/** What a header cell says its column holds. */
export const columnOf = (index: number, name: string): Column => ({ ...namedOf(name), index });

function meaningOf(index: number, name: string): Column {
  const trimmed = name.trim();
  // Wide brackets and units in one sign (℃, ㎎) as those of a keyboard.
  const split = splitUnit(trimmed.normalize('NFKC'));
  const { words, unit = minutesOfMoving(split.words) } = split;
  const exchange = exchangeIn(tokens(trimmed));
  if (exchange !== undefined) return { index, name: trimmed, role: 'carbohydrate', unit: exchange };
  // A column called just `Minutes` holds minutes.
  if (words.length === 1 && !unit && otherUnit(words[0]!) === 'min')
    return { index, name: trimmed, role: 'minutes', unit: 'min' };
  // A unit for a name: what is measured in it must show itself.
  const bareUnit = glucoseUnit(trimmed);
  if (bareUnit) return { index, name: trimmed, role: 'glucose', unit: bareUnit, maybe: true };
  const role = roleOf(conceptsOf(words), words, unit);
  const column: Column = { index, name: trimmed, role };
  if (unit) column.unit = unit;
  if (unit && foreignUnit(unit)) column.foreign = true;
  if (role === 'glucose' && isGlucoseUnit(unit) && !words.every((word) => conceptsOf([word]).size > 0)) {
    const has = conceptsOf(words);
    if (!has.has('glucose') && !has.has('value')) column.maybe = true;
  }
  const mark = markKindOf(trimmed);
  if (
    mark &&
    (role === 'person' || (role === 'ignore' && (mark !== 'name' || words.length > 1 || isOwnName(trimmed))))
  ) {
    column.role = 'person';
    column.mark = mark;
  }
  if (role === 'insulin' || role === 'insulin-rate' || role === 'medication-dose') {
    const kind = words.filter((word) => conceptsOf([word]).has('bolus') || /^(?:bolus|basal\w*|bolo)$/.test(word));
    if (kind.length > 0) column.label = kind.join(' ');
  }
  if (role === 'minutes' && conceptsOf(words).has('sport')) column.label = words.join(' ');
  if (role === 'time') {
    const offset = offsetNamed(trimmed);
    if (offset !== undefined) column.offset = offset;
  }
  return column;
}

const isGlucoseUnit = (unit: string | undefined): boolean => unit === 'mg/dL' || unit === 'mmol/L';

/** "Minutes of exercise" names its unit in words. */
function minutesOfMoving(words: string[]): string | undefined {
  const has = conceptsOf(words);
  const moving = has.has('exercise') || has.has('sport') || has.has('active');
  return moving && words.some((word) => word.length > 1 && otherUnit(word) === 'min') ? 'min' : undefined;
}

/** Ways and energies are no minutes and no food. */
const ASIDE_UNITS = new Set(['km', 'mi', 'm', 'steps', 'kcal', 'kj', 'cal']);

/** Dates in one language and something else in another: beside a word for content they are no date. */
const WEAK_DATES = new Set(['tag', 'data', 'dag', 'dia', 'day', 'jour', 'moment']);

function tellsTime(has: Set<Concept>, words: string[]): boolean {
  if (has.has('time') || has.has('instant')) return true;
  if (!has.has('date')) return false;
  const content =
    has.has('food') || has.has('glucose') || has.has('insulin') || has.has('exercise') || has.has('sensor');
  return !content || words.some((word) => !WEAK_DATES.has(word) && conceptsOf([word]).has('date'));
}

/** "Device time" is a clock; "upload time" is none of a reading. */
const isClockOwner = (word: string): boolean => word === 'device' || !conceptsOf([word]).has('other');

function roleOf(has: Set<Concept>, words: string[], unit?: string): Role {
  const when = tellsTime(has, words);
  const lasting = unit === 'min' || unit === 's' || unit === 'h';
  if (words.length === 0)
    return unit === 'mg/dL' || unit === 'mmol/L' ? 'glucose' : unit === 'min' ? 'minutes' : 'ignore';
  if (has.has('duration') || (lasting && (has.has('active') || has.has('exercise') || has.has('sport'))))
    return 'minutes';
  if (lasting && when) return 'ignore';
  // A pump's background is a rate, whatever it is measured in; it is never a dose.
  if (unit === 'IU/h' || (has.has('insulin') && isRate(words))) return 'insulin-rate';
  if (ASIDE_UNITS.has(unit ?? '')) return 'ignore';
  // The total of a meal's carbohydrate is what was eaten.
  if (has.has('carbohydrate') && isEatenTotal(words)) return 'carbohydrate';
  if (has.has('other') && !has.has('person') && !(when && words.every(isClockOwner))) return 'ignore';
  if (has.has('zone')) return 'offset';
  if (has.has('person')) return has.has('note') && !words.some(isDetail) ? 'note' : 'person';
  if (has.has('end') && when) return 'ignore';
  if (when && !has.has('note')) {
    if (has.has('instant') || (has.has('time') && has.has('date'))) return 'time';
    return has.has('date') ? 'date' : 'time';
  }
  if (has.has('unit') && !has.has('insulin') && !has.has('dose')) return 'unit';
  if (has.has('calibration')) return 'calibration';
  if (has.has('carbohydrate')) return 'carbohydrate';
  if (has.has('fingerstick') && (has.has('glucose') || has.has('value') || !has.has('note'))) return 'fingerstick';
  if (has.has('insulin') && !isTablets(words, unit)) {
    // "Active insulin" is a calculation, not a dose.
    if (has.has('active')) return 'ignore';
    return has.has('kind') || has.has('name') || has.has('note') ? 'insulin-name' : 'insulin';
  }
  if (has.has('alarm')) return 'alarm';
  if (has.has('sensor') && has.has('event')) return 'sensor-event';
  // Sugar of food is no glucose of blood, no carbohydrate as a whole, and no name of a food.
  if (
    has.has('food') &&
    (has.has('glucose') || words.some((word) => /糖|당|ζαχαρ|сахар|acucar|cukr|seker/.test(word.normalize('NFC'))))
  )
    return 'ignore';
  // Grams of food or of a value are carbohydrate only where no other word says of what.
  if (isNutrient(words.join(' '))) return 'ignore';
  if (unit === 'g')
    return (has.has('food') || has.has('value')) &&
      words.every((word) => /^[a-z]{1,3}$/.test(word) || conceptsOf([word]).size > 0)
      ? 'carbohydrate'
      : 'ignore';
  if (has.has('medication')) return has.has('dose') || has.has('value') ? 'medication-dose' : 'medication';
  if (has.has('dose')) return unit === 'IU' ? 'insulin' : 'medication-dose';
  if (has.has('intensity')) return 'intensity';
  // What goes with a meal and is counted in units is its insulin.
  if (has.has('food') && unit === 'IU') return 'insulin';
  if (has.has('food')) return has.has('kind') ? 'meal' : 'food';
  if (has.has('exercise') || has.has('sport')) return 'exercise';
  if (has.has('glucose')) return has.has('sensor') ? 'sensor' : 'glucose';
  if (has.has('sensor')) return has.has('name') || has.has('kind') ? 'ignore' : 'sensor';
  if (has.has('note')) return 'note';
  if (has.has('kind')) return 'kind';
  if (has.has('value')) return 'value';
  if (unit === 'mg/dL' || unit === 'mmol/L') return 'glucose';
  return unit === 'IU' ? 'insulin' : 'ignore';
}
