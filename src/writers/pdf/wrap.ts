import type { Typeface } from './typeface.ts';

/** After these a line may end inside a word; after a space that keeps a number to its unit only in need. */
const SOFT = /(?<=[-–—/_@.,;:)\]}&=?])(?=[^\s\d])/u;
const IN_NEED = new RegExp(`${SOFT.source}|(?<=\u00a0)`, 'u');

/** A letter with the marks that sit on it. */
const LETTERS = /\P{M}\p{M}*|\p{M}+/gu;

/**
 * Breaks text into lines no wider than `width` points. Lines end at spaces; a word too long for a line of its own
 * breaks after punctuation, or else between letters, so nothing ever runs out of its column. A line broken at a space
 * keeps it: readers of the file would else join two words. Measure such a line with `trimEnd`.
 */
export function wrap(text: string, face: Typeface, size: number, width: number): string[] {
  const lines: string[] = [];
  for (const paragraph of text.split('\n')) {
    const start = lines.length;
    let line = '';
    let used = 0;
    for (const word of paragraph.split(' ')) {
      if (!word) continue;
      const wide = face.width(word, size);
      if (line && used + wide <= width) {
        line += `${word} `;
        used += face.width(`${word} `, size);
        continue;
      }
      if (line) lines.push(line);
      line = word;
      if (wide > width) {
        const parts = breakWord(word, face, size, width);
        line = parts.pop() ?? '';
        for (const part of parts) lines.push(part);
      }
      line += ' ';
      used = face.width(line, size);
    }
    lines.push(line);
    if (lines.length - start > 1) feedLast(lines, face, size, width);
  }
  lines.push(lines.pop()!.trimEnd());
  return lines;
}

/** Letters of a last word that looks lost on a line of its own. */
const LONELY = 7;

/** Gives a lonely last word the word before it for company; so "at 3:27" keeps its "AM". */
function feedLast(lines: string[], face: Typeface, size: number, width: number): void {
  const last = lines.at(-1)!;
  const before = lines.at(-2);
  if (before === undefined || last.length > LONELY || last.indexOf(' ') !== last.length - 1) return;
  const words = before.trimEnd().split(' ');
  if (words.length < 4 || !before.endsWith(' ')) return;
  const longer = `${words.pop()} ${last}`;
  if (face.width(longer, size) > width) return;
  lines.splice(-2, 2, `${words.join(' ')} `, longer);
}

function breakWord(word: string, face: Typeface, size: number, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  let used = 0;
  for (const part of word.split(IN_NEED)) {
    const wide = face.width(part, size);
    if (used + wide <= width) {
      line += part;
      used += wide;
      continue;
    }
    if (wide <= width) {
      lines.push(line);
      line = part;
      used = wide;
      continue;
    }
    for (const letter of part.match(LETTERS) ?? []) {
      const step = face.width(letter, size);
      if (line && used + step > width) {
        lines.push(line);
        line = '';
        used = 0;
      }
      line += letter;
      used += step;
    }
  }
  lines.push(line);
  return lines;
}

/** Width of the widest piece of a text that no line end should part. */
export function widestPiece(text: string, face: Typeface, size: number): number {
  let widest = 0;
  for (const word of text.split(/[ \n]/)) {
    const wide = face.width(word, size);
    if (wide <= widest) continue;
    for (const part of word.split(SOFT)) widest = Math.max(widest, face.width(part, size));
  }
  return widest;
}

/** One line cut to fit, with an ellipsis. */
export function cut(text: string, face: Typeface, size: number, width: number): string {
  if (face.width(text, size) <= width) return text;
  const letters = text.match(LETTERS) ?? [];
  let used = face.width('…', size);
  let kept = '';
  for (const letter of letters) {
    used += face.width(letter, size);
    if (used > width) break;
    kept += letter;
  }
  return `${kept.trimEnd()}…`;
}
