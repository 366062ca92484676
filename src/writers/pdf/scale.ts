import type { Report } from '../../model/report.ts';

/** How a kind of text is set: points, and the distance from baseline to baseline. */
export interface Style {
  face: 'regular' | 'semibold';
  size: number;
  line: number;
}

type StyleName =
  | 'lead'
  | 'body'
  | 'strong'
  | 'small'
  | 'head1'
  | 'head2'
  | 'head3'
  | 'cell'
  | 'cellHead'
  | 'denseCell'
  | 'denseHead'
  | 'standing';

export interface Scale extends Record<StyleName, Style> {
  /** Space between blocks; everything else is a share of it. */
  rhythm: number;
  /** Standing lines at the foot, at most; two at the head. */
  standingLines: number;
  /** Width of the line under a row of a table. */
  rule: number;
  /** Longest line of running text, points; absent: as long as its column. */
  longest?: number;
}

const regular = (size: number, line: number): Style => ({ face: 'regular', size, line });
const semibold = (size: number, line: number): Style => ({ face: 'semibold', size, line });

const CLINIC: Scale = {
  lead: regular(11.5, 15.5),
  body: regular(10, 13.5),
  strong: semibold(10, 13.5),
  small: regular(8.75, 11.75),
  head1: semibold(17, 21.5),
  head2: semibold(12.5, 16.5),
  head3: semibold(10.5, 14),
  cell: regular(9.5, 12.5),
  cellHead: semibold(8.75, 11.75),
  denseCell: regular(8.75, 11),
  denseHead: semibold(8.5, 11),
  standing: regular(8.5, 11),
  standingLines: 2,
  rhythm: 9,
  rule: 0.75,
};

/** Nothing under 12 pt but the standing lines. */
const PATIENT: Scale = {
  lead: regular(16, 21.5),
  body: regular(14, 19),
  strong: semibold(14, 19),
  small: regular(12, 16),
  head1: semibold(22, 28),
  head2: semibold(16, 21.5),
  head3: semibold(14, 19),
  cell: regular(13, 17),
  cellHead: semibold(12, 16),
  denseCell: regular(12, 15.5),
  denseHead: semibold(12, 15.5),
  standing: regular(9, 11),
  standingLines: 2,
  rhythm: 10,
  rule: 0.75,
};

/**
 * Large print: body 18 pt, nothing under 16, lines 1.25 apart and at most 6 inches long (guidelines for large print of
 * the American Council of the Blind, from memory).
 */
const LARGE: Scale = {
  lead: regular(20, 25.5),
  body: regular(18, 23.5),
  strong: semibold(18, 23.5),
  small: regular(16, 20.5),
  head1: semibold(28, 35),
  head2: semibold(21, 27),
  head3: semibold(18, 23.5),
  cell: regular(16, 20.5),
  cellHead: semibold(16, 20.5),
  denseCell: regular(16, 20.5),
  denseHead: semibold(16, 20.5),
  standing: regular(16, 19),
  standingLines: 3,
  rhythm: 12,
  rule: 1,
  longest: 432,
};

export const scaleOf = ({ voice, large }: Report): Scale => {
  if (voice === 'clinic') return CLINIC;
  return large ? LARGE : PATIENT;
};

/** From the top of a line box to its baseline: the faces rise 1.025 and fall 0.275 of their size. */
export const baseline = ({ size, line }: Style): number => line / 2 + 0.375 * size;
