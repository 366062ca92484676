import type { SignShape } from '../model/drawing.ts';

/** A note mark as closed polygons and one circle, around 0,0 with a height of 1, y down. */
export interface SignOutline {
  polygons: number[][];
  /** Radius. `ring` is drawn as a line, the rest filled. */
  circle?: number;
  hollow?: boolean;
  /** Height of a letter that fits inside, as a share of the sign's size, and where its middle lies. */
  letter: number;
  middle: number;
}

const plus = (arm: number): number[] => [
  ...[-arm, -0.5, arm, -0.5, arm, -arm, 0.5, -arm, 0.5, arm, arm, arm],
  ...[arm, 0.5, -arm, 0.5, -arm, arm, -0.5, arm, -0.5, -arm, -arm, -arm],
];

export const SIGNS: Readonly<Record<SignShape, SignOutline>> = {
  circle: { polygons: [], circle: 0.5, letter: 0.72, middle: 0 },
  triangle: { polygons: [[0, -0.54, 0.58, 0.46, -0.58, 0.46]], letter: 0.56, middle: 0.14 },
  diamond: { polygons: [[0, -0.58, 0.58, 0, 0, 0.58, -0.58, 0]], letter: 0.56, middle: 0 },
  square: { polygons: [[-0.46, -0.46, 0.46, -0.46, 0.46, 0.46, -0.46, 0.46]], letter: 0.72, middle: 0 },
  plus: { polygons: [plus(0.19)], letter: 0.5, middle: 0 },
  bell: {
    polygons: [
      [-0.1, -0.5, 0.1, -0.5, 0.3, -0.3, 0.34, 0.1, 0.48, 0.3, -0.48, 0.3, -0.34, 0.1, -0.3, -0.3],
      [-0.14, 0.36, 0.14, 0.36, 0.08, 0.5, -0.08, 0.5],
    ],
    letter: 0.5,
    middle: 0,
  },
  ring: { polygons: [], circle: 0.42, hollow: true, letter: 0.6, middle: 0 },
  dash: { polygons: [[-0.5, -0.12, 0.5, -0.12, 0.5, 0.12, -0.5, 0.12]], letter: 0.5, middle: 0 },
};

/** No letter is printed smaller than this, points: then it stands beside its sign. */
export const LEAST_LETTER = 5.5;

/** Where a sign's letter goes: inside when it fits at a readable size, else to the right. */
export function letterPlace(shape: SignShape, size: number): { size: number; dx: number; dy: number; inside: boolean } {
  const sign = SIGNS[shape];
  const roomy = shape !== 'plus' && shape !== 'dash' && shape !== 'bell';
  const inside = size * sign.letter;
  if (roomy && inside >= LEAST_LETTER)
    return { size: inside, dx: 0, dy: size * sign.middle + inside * 0.35, inside: true };
  const beside = Math.max(LEAST_LETTER, size * 0.8);
  return { size: beside, dx: size * 0.5 + 1, dy: beside * 0.35, inside: false };
}
