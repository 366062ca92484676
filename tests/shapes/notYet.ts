import { normal } from './normal.ts';
import { PROPERTIES, type Property, type Shape } from './shape.ts';

/** Values that the readers are known not to pass yet, left out of the ordinary test; `npm run shapes` holds them all. */
const NOT_YET: Partial<Record<Property, string[]>> = {
  language: [
    ...['ar', 'cs', 'da', 'de', 'el', 'es', 'fi', 'fr', 'he', 'hu', 'it', 'ja', 'ko', 'lt', 'nl', 'pl', 'ru', 'tr'],
    ...['zh', 'sv', 'pt'],
  ],
  series: ['real-long'],
  number: ['long', 'thousandths'],
  unitAt: ['cell'],
  time: ['two-serial', 'half-before', 'two-half-before', 'year-signs', 'year-named-own'],
  second: ['nameless-few'],
  secondClock: ['utc'],
  footer: ['sum'],
  header: ['absent'],
  vocabulary: ['in-it', 'in-fr'],
  decoy: ['sugar'],
  person: ['first-and-last'],
  defect: ['quoted-thousand', 'odd-decimal', 'other-delimiter', 'hours-to-24', 'unit-turns', 'order-flipped'],
  limits: ['phrase'],
};

/** The shape without the values that the readers do not pass yet. */
export function passing(shape: Shape): Shape {
  let now = shape;
  for (let round = 0; round < 3; round++) {
    for (const [name, values] of Object.entries(NOT_YET) as [Property, string[]][])
      if (values.includes(now[name]))
        now = { ...now, [name]: name === 'unitAt' && now.notes === 'kind-shared' ? 'column' : PROPERTIES[name][0]! };
    now = normal(now);
  }
  return now;
}
