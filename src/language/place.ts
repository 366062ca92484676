/** Languages that both papers exist in. */
export const LANGUAGES = ['en', 'es'] as const;
export type Language = (typeof LANGUAGES)[number];

/** Countries a language is offered for (ISO 3166), the first the one its words are written for. */
const COUNTRIES: Record<Language, readonly string[]> = {
  en: ['US', 'CA', 'GB', 'IE', 'AU', 'NZ', 'ZA', 'IN'],
  es: [
    ...['MX', 'US', 'ES', 'AR', 'BO', 'CL', 'CO', 'CR', 'CU', 'DO', 'EC', 'GT', 'HN', 'NI', 'PA', 'PE', 'PR', 'PY'],
    ...['SV', 'UY', 'VE'],
  ],
};

/** Where US Letter is the usual paper (Unicode CLDR, supplemental measurement data; from memory). Elsewhere A4. */
const LETTER = new Set(['US', 'CA', 'MX', 'CL', 'CO', 'CR', 'GT', 'NI', 'PA', 'PR', 'SV', 'VE']);

/** Countries that write English as Britain does. A file of words that differ is laid over the American ones. */
const BRITISH = new Set(['GB', 'IE', 'AU', 'NZ', 'ZA', 'IN']);
/** Countries where Spanish is written with a decimal comma as in Spain (Unicode CLDR; from memory). */
const COMMA = new Set(['ES', 'AR', 'BO', 'CL', 'CO', 'CR', 'EC', 'PY', 'UY', 'VE']);

/** Where a paper is read: decides words, number and date forms, the clock and the paper. Never the unit of glucose. */
export interface Place {
  language: Language;
  /** BCP 47 tag for forms; absent: as the words of the language say. */
  locale?: string;
  /** Name of the file of words laid over those of the language. */
  over?: string;
  paper: 'a4' | 'letter';
}

/** Every region that may be asked for, as it is written: `es-MX`. */
export const REGIONS: readonly string[] = LANGUAGES.flatMap((language) =>
  COUNTRIES[language].map((country) => `${language}-${country}`),
);

/**
 * The place for a language, a region (`es-MX`, or `MX` beside a language), both or none. Null when the two do not go
 * together or the region is not known.
 */
export function placeOf(language: Language | undefined, region: string | undefined): Place | null {
  if (region === undefined) return { language: language ?? 'en', paper: 'a4' };
  const [, tongue, country] = /^(?:([a-z]{2})-)?([A-Z]{2})$/.exec(region) ?? [];
  const spoken = LANGUAGES.find((one) => one === (tongue ?? language ?? 'en'));
  if (spoken === undefined || country === undefined || !COUNTRIES[spoken].includes(country)) return null;
  if (language !== undefined && language !== spoken) return null;
  const over =
    spoken === 'en' && BRITISH.has(country) ? 'en-GB' : spoken === 'es' && COMMA.has(country) ? 'es-ES' : undefined;
  return {
    language: spoken,
    locale: `${spoken}-${country}`,
    ...(over === undefined ? {} : { over }),
    paper: LETTER.has(country) ? 'letter' : 'a4',
  };
}
