import type { Analysis } from '../analyse.ts';
import type { Readings } from '../model/timeline.ts';

export interface JsonOptions {
  /** False leaves the single readings out, for what only needs the numbers made of them. */
  readings?: boolean;
}

/** Where the readings go. With its name and a quote in it: no text of a person, once escaped, can look like this. */
const HOLE = '"readings": "@"';

/**
 * The analysis as JSON for programs, in pieces that follow one another: readings as one array a column on one line each,
 * numbers unrounded, unknown numbers null. The order of names is fixed, so the same analysis gives the same text.
 */
export function analysisJson(analysis: Analysis, { readings = true }: JsonOptions = {}): string[] {
  // What was set aside goes into a table of its own: it may be longer than all the rest.
  const { ok: _, timeline: whole, setAside: ___, ...rest } = analysis;
  // The timeline's own issues stand among those of the analysis already.
  const { issues: __, ...timeline } = whole;
  const inner = readings ? '@' : { count: timeline.readings.count };
  const text = `${JSON.stringify({ ...rest, timeline: { ...timeline, readings: inner } }, null, 1)}\n`;
  if (!readings) return [text];
  const at = text.indexOf(HOLE);
  return [text.slice(0, at), '"readings": {\n', ...columns(whole.readings), '\n  }', text.slice(at + HOLE.length)];
}

function columns(readings: Readings): string[] {
  return Object.entries(readings).flatMap(([name, value], i) => [
    `${i === 0 ? '' : ',\n'}   "${name}": `,
    ...(ArrayBuffer.isView(value) ? numbers(value as Float64Array) : [JSON.stringify(value)]),
  ]);
}

const PIECE = 8192;

/** As one text, a year of one-minute readings would be held twice over while it grows. */
function numbers(column: Float64Array): string[] {
  const pieces = ['['];
  for (let from = 0; from < column.length; from += PIECE) {
    const piece = column
      .subarray(from, from + PIECE)
      .join()
      .replace(UNKNOWN, 'null');
    pieces.push(from === 0 ? piece : `,${piece}`);
  }
  pieces.push(']');
  return pieces;
}

const UNKNOWN = /-?(?:NaN|Infinity)/g;
