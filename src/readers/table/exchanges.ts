import { conceptsOf } from './vocabulary.ts';

/**
 * Carbohydrate counted in units of bread or in exchanges, of 10 to 15 g each by country: kept as it is written, never as grams. From
 * memory, without accents.
 */
const EXCHANGE =
  /^(?:be|ke|khe|xe|хе|ww|broteinheit\p{L}*|broodeenheid\p{L}*|kohlenhydrateinheit\p{L}*|exchanges?|raciones|wymiennik\p{L}*)$/u;

/** The word of such a unit in a header that says nothing else but food. */
export function exchangeIn(words: string[]): string | undefined {
  const found = words.find((word) => EXCHANGE.test(word));
  if (words.some((word) => word.startsWith('хлебн')) && words.some((word) => word.startsWith('един'))) return 'ХЕ';
  if (found === undefined) return undefined;
  const others = words.filter((word) => word !== found);
  // Two letters may be a word of any language, unless food stands beside them or nothing does.
  const food = others.every(
    (word) =>
      conceptsOf([word]).has('carbohydrate') || conceptsOf([word]).has('food') || conceptsOf([word]).has('unit'),
  );
  return food ? found.toUpperCase() : undefined;
}

/** "Total carb": the whole of what was eaten, and no sum of a table. */
export const isEatenTotal = (words: string[]): boolean =>
  words.every(
    (word) => /^(?:total|net|sum|gesamt\w*|totales?|totaux)$/.test(word) || conceptsOf([word]).has('carbohydrate'),
  );
