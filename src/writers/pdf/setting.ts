import type { Palette } from '../palette.ts';
import type { Strip } from './flow.ts';
import { PLAIN } from './plainSetter.ts';
import { baseline, type Scale, type Style } from './scale.ts';
import { REORDERED, RIGHT_TO_LEFT, STEERING } from './scripts.ts';
import type { Node } from './tree.ts';
import type { Typeface } from './typeface.ts';
import { wrap } from './wrap.ts';

/** Text whose glyphs alone would be read aloud wrongly: replaced characters, and scripts that do not run in glyph order. */
const SPOKEN = new RegExp(`\uFFFD|${RIGHT_TO_LEFT.source}|${REORDERED.source}`, 'u');

/** What every block needs to be measured and drawn. */
export interface Setting {
  scale: Scale;
  palette: Palette;
  faces: Record<Style['face'], Typeface>;
  /** Height of the content box: a block taller than this must be cut somewhere. */
  capacity: number;
  /** Structure element the blocks hang under. */
  parent: Node;
  /** Depth of a heading in the document's outline, given the level the page asked for. */
  depth(level: 1 | 2 | 3): number;
}

/** Text ready to draw, and the true text when its glyphs do not tell it. */
export interface SetText {
  lines: string[];
  style: Style;
  face: Typeface;
  actual?: string;
}

export function setText(text: string, style: Style, width: number, { faces }: Setting): SetText {
  const face = faces[style.face];
  const readable = face.readable(text);
  const set: SetText = { lines: wrap(readable, face, style.size, width), style, face };
  if (!PLAIN.test(readable) && SPOKEN.test(readable)) set.actual = text.replace(STEERING, '');
  return set;
}

/** One strip a line; the first two and the last two lines stay together. `left` moves the text to the right. */
export function lineStrips(text: SetText, owner: Node, colour: string, left = 0): Strip[] {
  const { lines, style, face } = text;
  if (text.actual) owner.actual = text.actual;
  const base = baseline(style);
  return lines.map((line, i) => ({
    height: style.line,
    gap: 0,
    keep: i < lines.length - 1 && (i === 0 || i === lines.length - 2),
    draw: (sheet, x, y) => sheet.as(owner).text(line, x + left, y + base, face, style.size, colour),
  }));
}
