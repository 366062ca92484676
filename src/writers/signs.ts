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
  circle: { polygons: [], circle: 0.5, letter: 0.7, middle: 0 },
  triangle: { polygons: [[0, -0.54, 0.58, 0.46, -0.58, 0.46]], letter: 0.54, middle: 0.15 },
  wedge: { polygons: [[0, 0.54, 0.58, -0.46, -0.58, -0.46]], letter: 0.54, middle: -0.15 },
  steps: {
    polygons: [[-0.6, 0.5, -0.6, 0.1, -0.2, 0.1, -0.2, -0.3, 0.2, -0.3, 0.2, -0.05, 0.6, -0.05, 0.6, 0.5]],
    letter: 0.54,
    middle: 0.2,
  },
  diamond: { polygons: [[0, -0.58, 0.58, 0, 0, 0.58, -0.58, 0]], letter: 0.58, middle: 0 },
  square: { polygons: [[-0.46, -0.46, 0.46, -0.46, 0.46, 0.46, -0.46, 0.46]], letter: 0.7, middle: 0 },
  plus: { polygons: [plus(0.27)], letter: 0.66, middle: 0 },
  bell: {
    polygons: [
      [-0.1, -0.52, 0.1, -0.52, 0.32, -0.32, 0.36, 0.12, 0.5, 0.34, -0.5, 0.34, -0.36, 0.12, -0.32, -0.32],
      [-0.14, 0.4, 0.14, 0.4, 0.08, 0.52, -0.08, 0.52],
    ],
    letter: 0.58,
    middle: 0.02,
  },
  ring: { polygons: [], circle: 0.45, hollow: true, letter: 0.62, middle: 0 },
  dash: { polygons: [[-0.55, -0.33, 0.55, -0.33, 0.55, 0.33, -0.55, 0.33]], letter: 0.62, middle: 0 },
};

/** No letter is printed smaller than this, points. */
export const LEAST_LETTER = 5.5;

/** A sign of this size and more holds its letter; the letter of a smaller one stands to the right. Points. */
const ROOMY = 7.5;

export interface LetterPlace {
  size: number;
  /** From the sign's middle to the middle (inside) or start (beside) of the letter's baseline. */
  dx: number;
  dy: number;
  inside: boolean;
  /** Whether it stands on the sign's fill. */
  onFill: boolean;
}

/** Where a sign's letter goes. */
export function letterPlace(shape: SignShape, size: number): LetterPlace {
  const sign = SIGNS[shape];
  const letter = Math.max(LEAST_LETTER, size * sign.letter);
  if (size < ROOMY) return { size: letter, dx: size * 0.5 + 1, dy: letter * 0.35, inside: false, onFill: false };
  return { size: letter, dx: 0, dy: size * sign.middle + letter * 0.35, inside: true, onFill: !sign.hollow };
}

/** Width of the line of a hollow sign. */
export const ringWidth = (size: number): number => Math.max(0.75, size * 0.12);
