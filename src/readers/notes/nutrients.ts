import { once, onceUpTo } from '../../once.ts';
import { plain, tokens } from '../table/vocabulary.ts';

/**
 * Protein, fat, fibre, energy, salt: what food holds beside carbohydrate. From memory, without accents, in the languages of
 * table/vocabulary.ts and of table/scripts.json.
 */
const isOne = oneOf(
  [
    'protein(?:e|s|a|es|as)?|eiweiss\\p{L}*|eiwit\\p{L}*|proteiini\\p{L}*|bialk\\p{L}*|bilkovin\\p{L}*|feherj\\p{L}*|baltym\\p{L}*|prot',
    'fats?|fett\\p{L}*|grasas?|lipid\\p{L}*|graisses?|grass[io]|gorduras?|vet|vetten|fedt|rasva\\p{L}*|tluszcz\\p{L}*|tuk|tuky|zsir\\p{L}*|riebal\\p{L}*|yag|saturates|saturated',
    'fib(?:er|re|res|ra|ras|ers)|ballaststoff\\p{L}*|vezels?|kuitu\\p{L}*|blonnik\\p{L}*|vlaknin\\p{L}*|rost|skaidul\\p{L}*|lif|fibres',
    'calori\\p{L}*|kcal|kj|kalori\\p{L}*|kilocalori\\p{L}*|energ(?:y|ie|ia|i)|brennwert',
    'sodium|natrium|salt|salz|alcohol|alkohol',
    'белк\\p{L}*|жир\\p{L}*|клетчатк\\p{L}*|калори\\p{L}*|πρωτει\\p{L}*|λιπαρ\\p{L}*|θερμιδ\\p{L}*|חלבון|שומן|קלוריות|بروتين\\p{L}*|دهون|سعرات',
  ].join('|'),
);
const UNPARTED = /蛋白|脂肪|脂質|膳食纤维|食物繊維|热量|熱量|カロリー|たんぱく|タンパク|단백|지방|칼로리/;
/** Sugar is glucose's word too: it is food's only beside other values of food. */
const SUGAR =
  /^(?:sugars?|zucker|azucar\w*|sucres?|zuccher\w*|acucar\w*|suikers?|socker\w*|sukker\w*|sokeri\w*|cukr\w*|cukier|seker)$/;
/** Bodies hold fat and burn energy too; a share is no amount of food. */
const isOfBody = oneOf(
  'body|active|activity|burn\\p{L}*|exercise|sport|expend\\p{L}*|korper\\p{L}*|corporal|corporel\\p{L}*|kropp\\p{L}*|%|percent',
);
/** Units in which food values stand. */
const UNITS = new Set(['g', 'mg', 'kcal', 'kj', 'cal', '']);

/** Whether words (of a header, or of a kind of row) name a value of food that is no carbohydrate. */
export const isNutrient = onceUpTo(2000, (name): boolean => {
  const words = tokens(name);
  return (
    name.length <= 60 && (words.some(isOne) || UNPARTED.test(plain(name).normalize('NFC'))) && !words.some(isOfBody)
  );
});

export const isSugar = (name: string): boolean => tokens(name).some((word) => SUGAR.test(word));

export const isFoodUnit = (unit: string | undefined): boolean => UNITS.has(unit ?? '');

/**
 * Whether a word is one of these. A word in ASCII is looked for by a pattern that knows no other letters: to build the table of
 * all letters a dozen times took the engine longer than to read a header.
 */
function oneOf(words: string): (word: string) => boolean {
  const all = once(() => new RegExp(`^(?:${words})$`, 'u'));
  const ascii = once(() => new RegExp(`^(?:${words.replaceAll('\\p{L}', '[A-Za-z]')})$`));
  return (word) => (/^[ -~]*$/.test(word) ? ascii() : all()).test(word);
}
