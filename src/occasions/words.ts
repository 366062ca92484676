import type { LogWords, Slot } from '../model/logbook.ts';
import { once } from '../once.ts';

/** Nothing known about words: names are compared as they stand. */
export const NO_LOG_WORDS: LogWords = {
  amounts: [],
  joins: [],
  plurals: [],
  foods: {},
  meals: {},
  treatsLow: [],
  effort: { light: [], hard: [] },
  longActing: [],
};

/** Longer than this it is a remark, not a name. */
const LONGEST_NAME = 48;

/**
 * Controls of the second row are letters that a program lost before the file came to us: `Cr\u008fme` was written in
 * another encoding. Which letter it was nobody knows any more; that one stood there is kept.
 */
const LOST = /[\u0080-\u009f]/g;

const plain = (text: string): string =>
  text.normalize('NFC').toLowerCase().replace(LOST, '\ufffd').replace(/\s+/g, ' ').trim();

/** The words of a text, in lower case. */
const wordsIn = (text: string): string[] =>
  plain(text).match(/[\p{L}\p{N}\ufffd]+(?:[-'’][\p{L}\p{N}\ufffd]+)*/gu) ?? [];

const hasAny = (text: string, listed: readonly string[]): boolean => {
  const words = wordsIn(text);
  return listed.some((one) => (one.includes(' ') ? plain(text).includes(one) : words.includes(one)));
};

/** Reads logbook words; names already met are kept, because people eat the same things. */
export interface LogReader {
  /** The food's name as it is grouped by, or null where there is none. Never a guess: unknown words stay as written. */
  food(label: string): string | null;
  treatsLow(label: string): boolean;
  slot(text: string): Slot | null;
  effort(text: string): 'light' | 'hard' | 'not-noted';
  longActing(label: string): boolean;
  /** Speaks of how it felt. */
  felt(text: string): boolean;
}

export function logReader(words: LogWords): LogReader {
  const lists = listsOf(words);
  const { mealNames, treats } = lists;
  const names = new Map<string, string | null>();
  /** Names as first written, by what they are grouped by. */
  const shown = new Map<string, string>();
  const food = (label: string): string | null => {
    let name = names.get(label);
    if (name === undefined) {
      // A note that only names the meal names no food.
      const named = mealNames.has(plain(label)) ? null : foodName(label, lists);
      if (named !== null && !shown.has(named.key)) shown.set(named.key, named.shown);
      name = named === null ? null : (shown.get(named.key) ?? null);
      names.set(label, name);
    }
    return name;
  };
  const slots = Object.entries(words.meals) as [Slot, string[]][];
  return {
    food,
    treatsLow: once((label) => treats.has(foodName(label, lists)?.key ?? '')),
    slot: once((text) => slots.find(([, listed]) => hasAny(text, listed))?.[0] ?? null),
    effort: once((text) =>
      hasAny(text, words.effort.light) ? 'light' : hasAny(text, words.effort.hard) ? 'hard' : 'not-noted',
    ),
    longActing: once((label) => hasAny(label, words.longActing)),
    felt: (text) => hasAny(text, words.felt ?? []),
  };
}

/** What the listed words stand for. */
interface Lists {
  /** A listed spelling to the name the clinic gave it. */
  single: Map<string, string>;
  amounts: Set<string>;
  join: RegExp | null;
  plurals: LogWords['plurals'];
  mealNames: Set<string>;
  /** Keys of the foods that treat a low. */
  treats: Set<string>;
}

/** Worked out once: all people of a folder are read with the same words. */
const known = new WeakMap<LogWords, Lists>();

function listsOf(words: LogWords): Lists {
  let lists = known.get(words);
  if (!lists) {
    const foods = Object.entries(words.foods);
    lists = {
      single: new Map(foods.flatMap(([name, others]) => others.map((other) => [plain(other), name] as const))),
      amounts: new Set(words.amounts),
      join: words.joins.length === 0 ? null : joinPattern(words.joins),
      plurals: words.plurals,
      mealNames: new Set(Object.values(words.meals).flat()),
      treats: new Set(),
    };
    for (const one of words.treatsLow) {
      const key = foodName(one, lists)?.key;
      if (key !== undefined) lists.treats.add(key);
    }
    known.set(words, lists);
  }
  return lists;
}

/**
 * Gentle: case, amounts and brackets go, several become one, other spellings that the clinic listed become the name
 * it gave. Two foods stay two foods, in the order written.
 */
function foodName(label: string, lists: Lists): { key: string; shown: string } | null {
  const { single, amounts, join } = lists;
  if (label.length > LONGEST_NAME) return null;
  const bare = plain(label).replace(/\([^)]*\)/g, ' ');
  const whole = single.get(bare.trim());
  if (whole !== undefined) return { key: whole, shown: whole };
  const joined = join === null ? bare : bare.replace(join, ' , ');
  const parts = joined.split(/[,+&;/]/).flatMap((part): { key: string; shown: string }[] => {
    const kept = wordsIn(part).filter((word) => !amounts.has(word) && !/^\d+(g|ml|x|oz)?$|^x\d+$/.test(word));
    const last = kept.pop();
    if (last === undefined) return [];
    const several = [...kept, last].join(' ');
    const one = [...kept, singular(last, lists.plurals)].join(' ');
    const listed = single.get(several) ?? single.get(one);
    return [{ key: listed ?? one, shown: listed ?? several }];
  });
  if (parts.length === 0) return null;
  return { key: parts.map(({ key }) => key).join(', '), shown: parts.map((part) => part.shown).join(', ') };
}

function joinPattern(joins: readonly string[]): RegExp {
  // Under `u` no other sign may stand behind a backslash: "&" and "más" are joins too.
  const escaped = joins.map((join) => join.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&'));
  return new RegExp(`\\s(?:${escaped.join('|')})(?=\\s)`, 'gu');
}

/** Short words are left alone: peas lose their s, gas does not. */
function singular(word: string, plurals: LogWords['plurals']): string {
  if (word.length < 4) return word;
  const rule = plurals.find(([several]) => word.endsWith(several));
  return rule === undefined ? word : word.slice(0, word.length - rule[0].length) + rule[1];
}
