import { bytesOf, utf8 } from '../../bytes/text.ts';
import { readStamp } from '../times/dates.ts';
import { newStamp, SHAPE, type Stamp } from '../times/stamp.ts';

/** Of lines looked at to tell how a text is set, and of bytes that hold them (ours). */
const MOST_LINES = 60;
const HEAD = 8192;
const LONGEST_TIME = 60;
const LINE_END = /\r\n|\n|\r/;

const stamp = newStamp();

/** What a piece of text is as a time. */
export function shapeOf(text: string): number {
  if (text.length > LONGEST_TIME || !/\p{Nd}/u.test(text)) return SHAPE.none;
  const bytes = bytesOf(text);
  return readStamp(bytes, 0, bytes.length, stamp);
}

/** A piece of text as a time, until the next is asked for. */
export function stampOf(text: string): Stamp {
  shapeOf(text);
  return stamp;
}

/** The first lines; one that the end of the look cuts is left out. */
export function firstLines(bytes: Uint8Array): string[] {
  const lines = utf8(bytes, 0, Math.min(bytes.length, HEAD)).split(LINE_END);
  if (bytes.length > HEAD) lines.pop();
  return lines.slice(0, MOST_LINES);
}

/** A text changed line by line, with the ends that it had, so that every place stays what it is. */
export function mapLines(bytes: Uint8Array, change: (line: string, i: number) => string): Uint8Array {
  const pieces = utf8(bytes).split(/(\r\n|\n|\r)/);
  for (let i = 0; i < pieces.length; i += 2) pieces[i] = change(pieces[i]!, i >> 1);
  return bytesOf(pieces.join(''));
}

export const linesIn = (bytes: Uint8Array): string[] => utf8(bytes).split(LINE_END);

export const quoted = (cell: string): string => `"${cell.replaceAll('"', '""')}"`;

/** How many words at the start of a line tell a time, a whole one before a clock alone; 0: none do. */
export function timeWords(words: readonly string[]): { count: number; shape: number } {
  let found: { count: number; shape: number } = { count: 0, shape: SHAPE.none };
  for (let count = 1; count <= Math.min(words.length, MOST_WORDS); count++) {
    const shape = shapeOf(words.slice(0, count).join(' ').replace(/,$/, ''));
    if (shape === SHAPE.stamp || (found.shape !== SHAPE.stamp && (shape === SHAPE.clock || shape === SHAPE.day)))
      found = { count, shape };
  }
  return found;
}

/** `Tue 17 March 2026 06:10 am` (ours). */
const MOST_WORDS = 6;
