/**
 * Reading level of English text: Kincaid et al. 1975, Research Branch Report 8-75. Counting rules are ours: every
 * number, clock time and unit is one word of one syllable, and so are the few medicine names that cannot be replaced.
 */

const ONE_SYLLABLE = new Set([
  'mg/dl',
  'mmol/l',
  'acetaminophen',
  'paracetamol',
  'hydroxyurea',
  'am',
  'pm',
  'h',
  'min',
]);

/** Words the rules below miscount. */
const KNOWN: Record<string, number> = {
  australian: 4,
  reptilian: 4,
  seemingly: 3,
  something: 2,
  someone: 2,
  sometimes: 2,
  evening: 2,
  evenings: 2,
  average: 3,
  averages: 3,
  area: 3,
  being: 2,
  variability: 6,
  variation: 4,
  coefficient: 5,
  diabetes: 4,
  hours: 1,
  hour: 1,
  finger: 2,
  leaflet: 2,
  pharmacist: 3,
  themselves: 2,
  people: 2,
  every: 2,
  everything: 3,
  different: 3,
  usually: 4,
  period: 3,
  idea: 3,
  create: 2,
  medicine: 3,
  medicines: 3,
  insulin: 3,
};

/** Syllables of one English word. */
export function syllables(raw: string): number {
  const word = raw.toLowerCase().replace(/[’']s$/, '');
  if (word in KNOWN) return KNOWN[word]!;
  if (ONE_SYLLABLE.has(word) || /\d/.test(word)) return 1;
  const parts = word.split(/[-/]/).filter((part) => part !== '');
  if (parts.length > 1) return parts.reduce((sum, part) => sum + syllables(part), 0);
  const letters = word.replace(/[^a-z]/g, '').replace(/^y/, '');
  if (letters.length <= 3) return 1;
  let count = (letters.match(/[aeiouy]+/g) ?? []).length;
  if (/[^aeiouy]e$/.test(letters) && !/[^aeiouy]le$/.test(letters)) count--;
  if (/[^aeiouytd]ed$/.test(letters)) count--;
  if (/([^aeiouychsgzx]|[^cs]h)es$/.test(letters) && !/[^aeiouy]les$/.test(letters)) count--;
  if (/[^aeiouy]ely$/.test(letters)) count--;
  count += (letters.match(/i[ao](?!u)|[^tsc]ia|eo(?!u)|uou|y[aeo]|[aeiouy]ing$/g) ?? []).length;
  count -= (letters.match(/[tscg]io|cia|tia/g) ?? []).length;
  return Math.max(1, count);
}

/** A sentence ends at . ! ? before a space or the end; a heading or list item is one sentence. */
export function sentences(text: string): string[] {
  return text
    .split(/(?<=[.!?])\s+|\n+/)
    .map((sentence) => sentence.trim())
    .filter((sentence) => /[A-Za-z0-9]/.test(sentence));
}

export function words(text: string): string[] {
  return text.split(/[\s\u2014]+/).flatMap((token) => {
    const word = token.replace(/^[^A-Za-z0-9]+|[^A-Za-z0-9]+$/g, '');
    return word === '' ? [] : [word];
  });
}

export const gradeOf = (sentenceCount: number, wordCount: number, syllableCount: number): number =>
  0.39 * (wordCount / sentenceCount) + 11.8 * (syllableCount / wordCount) - 15.59;

export const easeOf = (sentenceCount: number, wordCount: number, syllableCount: number): number =>
  206.835 - 1.015 * (wordCount / sentenceCount) - 84.6 * (syllableCount / wordCount);

export function grade(text: string): number {
  const all = words(text);
  const total = all.reduce((sum, word) => sum + syllables(word), 0);
  return gradeOf(sentences(text).length, all.length, total);
}
