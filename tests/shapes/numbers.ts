import type { Shape } from './shape.ts';
import type { TrueReading } from './truth.ts';
import type { Words } from './words.ts';

/** Ten digits of other scripts, by language. */
const DIGITS: Record<string, string> = { ar: '٠١٢٣٤٥٦٧٨٩', ja: '0123456789' };
export const hasOwnDigits = (language: string): boolean => DIGITS[language] !== undefined;

/** A number as the shape writes glucose. */
export function glucoseText(value: number, shape: Shape): string {
  const decimals = shape.unit === 'mmol/L' ? 1 : 0;
  const plain = Number.isInteger(value * 10 ** decimals) ? value.toFixed(decimals) : String(value);
  if (shape.number === 'comma') return (decimals === 0 ? value.toFixed(1) : plain).replace('.', ',');
  if (shape.number === 'thousandths') return value.toFixed(3);
  if (shape.number === 'exponent') {
    const [digits, power] = value.toExponential().split('e');
    return `${digits}E${power![0]}${power!.slice(1).padStart(2, '0')}`;
  }
  if (shape.number === 'own-digits')
    return plain.replace(/\d/g, (digit) => [...(DIGITS[shape.language] ?? '0123456789')][Number(digit)]!);
  return plain;
}

/** Amounts of notes: with the decimal mark of the file, otherwise plain. */
export const amountText = (value: number, shape: Shape): string =>
  shape.number === 'comma' ? String(value).replace('.', ',') : String(value);

export function readingText(reading: TrueReading, shape: Shape, words: Words): string {
  const { limit, native } = reading;
  if (limit === 0) return glucoseText(native, shape);
  const bound = amountText(native, shape);
  const low = limit < 0;
  if (shape.limits === 'words') return low ? words.names.low! : words.names.high!;
  if (shape.limits === 'short') return low ? 'LO' : 'HI';
  if (shape.limits === 'or-equal') return `${low ? '≤' : '≥'}${bound}`;
  if (shape.limits === 'phrase') return `${low ? words.names.below : words.names.above} ${bound}`;
  return `${low ? '<' : '>'}${bound}`;
}

/** Units as languages write them; what is not listed is written like English. */
const SPELT: Record<string, Record<string, string>> = {
  IU: {
    de: 'IE',
    nl: 'IE',
    sv: 'E',
    da: 'IE',
    fr: 'UI',
    es: 'UI',
    it: 'UI',
    pt: 'UI',
    fi: 'ky',
    pl: 'j.',
    ru: 'ЕД',
    cs: 'j.',
    hu: 'NE',
    tr: 'Ü',
    ja: '単位',
    zh: '单位',
    ko: '단위',
    lt: 'VV',
  },
  g: { ru: 'г', ar: 'غم', he: 'גרם', zh: '克', el: 'γρ.' },
  min: { ru: 'мин', zh: '分钟', ja: '分', ko: '분', ar: 'دقيقة', he: 'דקות', el: 'λεπτά', tr: 'dk', hu: 'perc' },
  'mg/dL': { ru: 'мг/дл' },
  'mmol/L': { ru: 'ммоль/л' },
};
export const spelt = (unit: string, language: string): string => SPELT[unit]?.[language] ?? unit;
