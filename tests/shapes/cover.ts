import { chance } from '../../src/stats/chance.ts';
import { normal } from './normal.ts';
import { drawn, NAMES, PROPERTIES, type Property, plainest, type Shape } from './shape.ts';

export type Pair = [Property, string, Property, string];

const holds = (shape: Shape, [a, v, b, w]: Pair): boolean => shape[a] === v && shape[b] === w;

let known: Pair[] | undefined;
/** Every pair of values that can stand together in one file. */
export function pairs(): Pair[] {
  if (known) return known;
  known = [];
  for (let a = 0; a < NAMES.length; a++)
    for (let b = a + 1; b < NAMES.length; b++)
      for (const v of PROPERTIES[NAMES[a]!])
        for (const w of PROPERTIES[NAMES[b]!]) {
          const pair: Pair = [NAMES[a]!, v, NAMES[b]!, w];
          if (holds(normal(forced(plainest(1), pair)), pair)) known.push(pair);
        }
  return known;
}

/** Values that need another one to stand at all. */
const NEEDS: [Property, (value: string) => boolean, Property, string][] = [
  ['vocabulary', (value) => value !== 'own', 'notes', 'kind-shared'],
];

function forced(shape: Shape, [a, v, b, w]: Pair): Shape {
  const one: Shape = { ...shape, [a]: v, [b]: w };
  for (const [name, when, other, value] of NEEDS) if (when(one[name]) && other !== a && other !== b) one[other] = value;
  return one;
}

/** Shape number n of a run: drawn, with the pair whose turn it is, so that a run of enough shapes holds all pairs. */
export function shapeOf(run: number, n: number): Shape {
  const all = pairs();
  const seed = (Math.imul(run, 1_000_003) + n) >>> 0;
  const next = chance(seed);
  const pair = all[(n * 7919 + run * 104_729) % all.length]!;
  for (let attempt = 0; attempt < 20; attempt++) {
    const shape = normal(forced(drawn(next, seed), pair));
    if (holds(shape, pair)) return shape;
  }
  return normal(forced(plainest(seed), pair));
}

/** Counts which pairs a run has held. */
export function coverage(): { add(shape: Shape): void; counts(): { held: number; of: number } } {
  const open = new Set(pairs().map((pair) => pair.join('|')));
  const of = open.size;
  return {
    add(shape) {
      for (let a = 0; a < NAMES.length; a++)
        for (let b = a + 1; b < NAMES.length; b++)
          open.delete([NAMES[a], shape[NAMES[a]!], NAMES[b], shape[NAMES[b]!]].join('|'));
    },
    counts: () => ({ held: of - open.size, of }),
  };
}
