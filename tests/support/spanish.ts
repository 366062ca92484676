import { sentences as englishSentences } from './readability.ts';

/**
 * Ease of reading Spanish. Fernández Huerta 1959 and, on the INFLESZ scale, Szigriszt-Pazos 1993 (Barrio-Cantalejo et al.
 * 2008, An Sist Sanit Navar 31:135): both formulas from memory. Counting rules as for English: every number, clock time
 * and unit is one word of one syllable, and so are names of medicines that cannot be replaced.
 */

const ONE_SYLLABLE = new Set(
  ['mg/dl', 'mmol/l', 'acetaminofén', 'paracetamol', 'hidroxiurea', 'a.m', 'p.m', 'a', 'p', 'm', 'h', 'min'].values(),
);

/** Syllables by the rules of the Real Academia: a weak vowel without an accent joins its neighbours, two strong ones part. */
export function silabas(raw: string): number {
  const word = raw.toLowerCase().normalize('NFC');
  if (ONE_SYLLABLE.has(word) || /\d/.test(word)) return 1;
  const letters = word
    .replace(/[^a-záéíóúüñ]/g, '')
    .replace(/qu(?=[eiéí])/g, 'q')
    .replace(/gu(?=[eiéí])/g, 'g')
    .replace(/y(?=[aeiouáéíóú])/g, 'j')
    .replace(/y/g, 'i');
  let count = 0;
  for (const group of letters.match(/[aeiouáéíóúü]h?[aeiouáéíóúüh]*|[aeiouáéíóúü]/g) ?? []) {
    const strong = (group.match(/[aeoáéóíú]/g) ?? []).length;
    count += Math.max(1, strong);
  }
  return Math.max(1, count);
}

/** A stop after "a.m" or "p. m" ends no sentence unless a capital or a question follows. */
export const frases = (text: string): string[] =>
  englishSentences(text.replace(/\b([ap])\.[ \u00a0]?m\.(?!\s+[A-ZÁÉÍÓÚ¿¡])/g, '$1m'));

export const palabras = (text: string): string[] =>
  text.split(/[\s\u2014]+/).flatMap((token) => {
    const word = token.replace(/^[^\p{L}\p{N}]+|[^\p{L}\p{N}]+$/gu, '');
    return word === '' ? [] : [word];
  });

interface Counts {
  sentences: number;
  words: number;
  syllables: number;
}

/** 206.84 − 60 syllables a word − 1.02 words a sentence. */
export const fernandezHuerta = ({ sentences, words, syllables }: Counts): number =>
  206.84 - 60 * (syllables / words) - 1.02 * (words / sentences);

/** 206.835 − 62.3 syllables a word − words a sentence. From 65 "rather easy", from 80 "very easy" (INFLESZ). */
export const inflesz = ({ sentences, words, syllables }: Counts): number =>
  206.835 - 62.3 * (syllables / words) - words / sentences;

export function contar(text: string): Counts {
  const all = palabras(text);
  return {
    sentences: frases(text).length,
    words: all.length,
    syllables: all.reduce((sum, word) => sum + silabas(word), 0),
  };
}

/** Words that judge a person. */
const JUDGING =
  /(?<!\p{L})(diabétic[oa]s?|pacientes?|sufre\w*|padece\w*|cumplimiento|incumpl\w+|adherencia|control(ad[oa]s?|ar|es)?|descontrol\w*|buen[oa]?s?|mal[oa]?s?|pobres?|normal(es)?|anormal(es)?|perfect[oa]s?|fall(a|ó|as|ar|o)|fracas\w+|debe(n|ría|rías|s)?|deberá\w*|hay que|tiene que|tienes que|necesita que|test|prueba(s)?|tramp\w+|olvid\w+|culpa\w*|peor(es)?|peligr\w+|obes\w+|gord[oa]s?|tú|tus?|te|tienes|puedes|estás|estuviste)(?!\p{L})/iu;
/** Only a clinician may assert a cause. */
const CAUSE =
  /(?<!\p{L})(porque|a causa de|caus(a|ó|an|ado|ada|ados|adas) (por|un|una|el|la)(?! sola)|debid[oa]s? al?|por culpa|provoc\w+|gracias al?|efectos? de|respond(e|ió|en) al?|llev(a|ó|an) al?|hac(e|en) que|se debe al?|produc(e|en|ido))(?!\p{L})/iu;
/** Trade words that the patient paper says in other words. */
const TRADE =
  /(?<!\p{L})(MCG|hipo(gluc\p{L}+)?|hiper\p{L}*|glucémic\p{L}+|nivel [12]|nocturn\p{L}+|pos(t)?prandial\p{L}*|preprandial\p{L}*|excursi\p{L}+|CV|coeficiente|variabilidad|percentil\p{L}*|mediana|GMI|A1C|intersticial|intervalo|basal|bolo|calibraci\p{L}+|recomend\p{L}+|intervenci\p{L}+)(?!\p{L})/iu;
/** Never a verdict without its statistics. */
const CLAIMS = /(?<!\p{L})(significativ\p{L}+|tendencias?|mejor(ó|aron|ado)|empeor\p{L}+|1 de cada \d+)(?!\p{L})/iu;

const VERBS =
  /^(aument|sub|baj|reduc|reduzc|disminu|añad|agreg|suspend|dej|omit|salt|cambi|ajust|corrij|correg|tom|dé$|dar$|da$|pon|aplic|inyect|administr|dupli|divid)/iu;
const DRUGS =
  /^(insulinas?|dosis|unidad(es)?|basal(es)?|bolos?|tabletas?|pastillas?|medicinas?|medicamentos?|bomba|tasa|factor)$/iu;
/** Forms of those verbs that only tell what was, and nouns that look like them. */
const INFLECTED =
  /^(bajas?|bajos?|bajó|subió|subidas?|cambio|cambiaron|tomado|tomó|tomaron|tomas?|subía|bajan|tomadas?)$/iu;

/** A dosing verb within six words of a drug word. */
export function cruzaLaCerca(text: string): boolean {
  const all = palabras(text);
  return all.some(
    (word, at) =>
      VERBS.test(word) && !INFLECTED.test(word) && all.some((other, i) => DRUGS.test(other) && Math.abs(i - at) <= 6),
  );
}

/** What is wrong with a generated Spanish text, in words; empty when nothing is. */
export function faltas(text: string, voice: 'clinic' | 'patient'): string[] {
  const found = (
    [
      ['judging', JUDGING],
      ['cause', CAUSE],
      ['claim', CLAIMS],
      ...(voice === 'patient' ? ([['trade', TRADE]] as const) : []),
    ] as const
  ).flatMap(([name, list]) => {
    const match = list.exec(text);
    return match ? [`${name} word "${match[0]}"`] : [];
  });
  if (cruzaLaCerca(text)) found.push('dosing verb near a drug word');
  return found;
}
