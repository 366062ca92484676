import type { Property } from './shape.ts';

/** Values that the readers are known not to pass yet, left out of the ordinary test; `npm run shapes` holds them all. */
export const NOT_YET: Partial<Record<Property, string[]>> = {
  language: [
    ...['ar', 'cs', 'da', 'de', 'el', 'es', 'fi', 'fr', 'he', 'hu', 'it', 'ja', 'ko', 'lt', 'nl', 'pl', 'ru', 'tr'],
    ...['zh', 'sv', 'pt'],
  ],
  series: ['real-long'],
  number: ['long', 'thousandths'],
  unitAt: ['cell'],
  time: ['two-serial', 'half-before', 'two-half-before', 'year-signs', 'year-named-own'],
  second: ['nameless-few'],
  footer: ['sum'],
  vocabulary: ['in-it', 'in-fr'],
  decoy: ['sugar'],
  person: ['two-names'],
  defect: ['quoted-thousand', 'odd-decimal', 'other-delimiter', 'hours-to-24', 'unit-turns'],
  limits: ['phrase'],
};
