import { inVisualOrder, levelsOf, mirrored } from './bidi.ts';
import type { DocumentFont } from './documentFont.ts';
import { REORDERED, RIGHT_TO_LEFT, STEERS } from './scripts.ts';

/** A face of the document, and which characters it has. */
export interface Holder {
  font: DocumentFont;
  has(code: number): boolean;
}

/** A stretch of a line in one face and one direction, laid out. Measures in thousandths of the size. */
export interface Run {
  font: DocumentFont;
  /** The inside of a TJ array, in parts that stand `rise` above the baseline. */
  parts: { code: string; rise: number }[];
  /** From the left end of the line. */
  x: number;
  width: number;
  /** The text, where its glyphs do not follow its order. */
  actual?: string;
}

interface Stretch {
  text: string;
  level: number;
  holder: Holder;
}

const JOINS = /^[\p{M}\u200c\u200d]/u;

/**
 * Lays out one line whose letters come from several faces or run in both directions: levels, then stretches of one
 * level and one face, each given to the shaper once and placed by its level.
 */
export function mixedRuns(line: string, base: 'ltr' | 'rtl', holderOf: (code: number) => Holder): Run[] {
  const levels = base === 'rtl' || RIGHT_TO_LEFT.test(line) ? levelsOf(line, base) : null;
  const stretches: Stretch[] = [];
  let at = 0;
  for (const letter of line) {
    const level = levels?.[at] ?? 0;
    at += letter.length;
    if (STEERS.test(letter)) continue;
    const code = letter.codePointAt(0)!;
    const last = stretches.at(-1);
    // A mark stays with the letter it sits on, whatever other face has it too.
    const mark = last && JOINS.test(letter) && (code < 0x200e || last.holder.has(code));
    // So does a space between words from right to left: they are laid out as one.
    const space = last && letter === ' ' && level % 2 === 1 && last.level === level && last.holder.has(code);
    const holder = mark || space ? last.holder : holderOf(code);
    if (last && last.holder === holder && (last.level === level || mark)) last.text += letter;
    else stretches.push({ text: letter, level, holder });
  }
  // Placed as they stand on paper, told in the order in which they are read.
  const runs = stretches.map((stretch) => ({ level: stretch.level, run: layOut(stretch) }));
  let x = 0;
  for (const { run } of inVisualOrder(runs)) {
    run.x = x;
    x += run.width;
  }
  return runs.map(({ run }) => run);
}

function layOut({ text, level, holder: { font } }: Stretch): Run {
  let shown = text;
  if (level % 2 === 1) {
    shown = mirrored(text);
    // The shaper itself turns letters of such scripts round, but not signs and spaces between them.
    if (!RIGHT_TO_LEFT.test(text)) shown = [...shown].reverse().join('');
  }
  // With a list of features, even none, the run is laid out at once and not word by word.
  const [hex, positions] = font.encode(shown, []);
  const parts: Run['parts'] = [];
  let width = 0;
  hex.forEach((code, i) => {
    const { xAdvance, advanceWidth, xOffset, yOffset } = positions[i]!;
    const rise = Math.round(yOffset);
    if (parts.at(-1)?.rise !== rise) parts.push({ code: '', rise });
    const part = parts.at(-1)!;
    if (xOffset) part.code += ` ${hundredth(-xOffset)} `;
    part.code += `<${code}>`;
    const rest = xAdvance - advanceWidth - xOffset;
    if (rest) part.code += ` ${hundredth(-rest)} `;
    width += xAdvance;
  });
  // Text from right to left gets none: readers of the file turn round what they take for glyphs in drawn order.
  return REORDERED.test(text) ? { font, parts, x: 0, width, actual: text } : { font, parts, x: 0, width };
}

const hundredth = (value: number): number => Math.round(value * 100) / 100;
