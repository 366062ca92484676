import type { Mark, Role } from '../model/drawing.ts';

/** Parallel lines across a shape, 45 degrees to the page. Points; pitch is measured square to the lines. */
export interface Hatch {
  run: 'falling' | 'rising' | 'cross';
  width: number;
  pitch: number;
  colour: string;
}

/** How one role looks. `on` is the text colour that reads on `fill`. */
export interface Ink {
  fill: string;
  line: string;
  text: string;
  on: string;
  hatch?: Hatch;
}

export type Palette = Readonly<Record<Role, Ink>>;

const INK = '#1a1a1a';
const AXIS = '#525252';
const PAPER = '#ffffff';
/** 4.74:1 on white: lines, and text of 12 pt and more only. Smaller quiet text takes the axis ink. */
const LEAST = '#737373';
const GRID = '#bdbdbd';

/** A role that is mostly drawn as a line or a word. */
const plain = (colour: string, text = colour): Ink => ({ fill: colour, line: colour, text, on: PAPER });

/** Words about a band stay in ink: the lighter bands do not reach 4.5:1 as text. */
const band = (fill: string, on: string, line = fill): Ink => ({ fill, line, text: INK, on });

/**
 * Lows cool, highs earthy, in range calm; every colour is of the ColorBrewer sets Blues and BrBG (Harrower and Brewer
 * 2003), chosen to stay apart for readers with colour-vision deficiencies. The darkest two would meet in plain grey,
 * so the very high band is cross-hatched in colour too.
 */
export const COLOUR: Palette = {
  'very-low': band('#08519c', PAPER),
  low: band('#4292c6', INK),
  'in-range': band('#c7eae5', INK, AXIS),
  high: band('#a6611a', PAPER),
  'very-high': {
    ...band('#543005', PAPER),
    hatch: { run: 'cross', width: 0.75, pitch: 3.5, colour: '#bf812d' },
  },
  ink: plain(INK),
  axis: plain(AXIS),
  grid: plain(GRID, AXIS),
  limit: plain(AXIS),
  median: plain(INK),
  'inner-ribbon': { fill: '#80cdc1', line: '#01665e', text: INK, on: INK },
  'inner-edge': plain('#01665e'),
  'outer-ribbon': { fill: '#c7eae5', line: '#35978f', text: INK, on: INK },
  'outer-edge': plain('#35978f', INK),
  trace: plain(INK),
  interval: plain(AXIS),
  gap: plain(LEAST, AXIS),
  night: { fill: '#e3e3e3', line: AXIS, text: AXIS, on: INK },
  paper: { fill: PAPER, line: PAPER, text: INK, on: INK },
  muted: plain(LEAST, AXIS),
};

/** Black ink only: bands are told apart by hatch. Ink cover falls from very low to in range, so lows stay heaviest. */
export const GREY: Palette = {
  ...COLOUR,
  'very-low': band('#000000', PAPER),
  low: { ...band(PAPER, INK, INK), hatch: { run: 'falling', width: 1, pitch: 4, colour: '#000000' } },
  'in-range': band(PAPER, INK, AXIS),
  high: { ...band(PAPER, INK, INK), hatch: { run: 'rising', width: 0.75, pitch: 6, colour: '#000000' } },
  'very-high': { ...band(PAPER, INK, INK), hatch: { run: 'cross', width: 0.9, pitch: 3.5, colour: '#000000' } },
  'inner-ribbon': { fill: GRID, line: INK, text: INK, on: INK },
  'inner-edge': plain(INK),
  'outer-ribbon': { fill: '#e3e3e3', line: AXIS, text: INK, on: INK },
  'outer-edge': plain(AXIS),
};

/** How a filled mark is outlined; null where it is not. */
export function outlineOf(mark: Extract<Mark, { kind: 'shape' | 'rect' }>, palette: Palette) {
  if (!mark.outline) return null;
  const dash = mark.kind === 'rect' && mark.dotted ? ([1.5, 1.5] as const) : undefined;
  return { colour: palette[mark.outline].line, width: mark.outlineWidth ?? 0.75, dash };
}
