import { normal } from './normal.ts';
import { PROPERTIES, type Property, type Shape } from './shape.ts';

/** Values that the readers are known not to pass yet, left out of the ordinary test; `npm run shapes` holds them all. */
const NOT_YET: Partial<Record<Property, string[]>> = {
  decoy: ['coverage', 'battery'],
  defect: ['odd-decimal', 'hours-to-24', 'half-lost'],
  limits: ['phrase'],
  header: ['absent'],
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
