import type { Analysis } from '../analyse.ts';
import type { Readings } from '../model/timeline.ts';
import type { AnalysisJson } from '../schemas/analysis/index.ts';
import { NO_OFFSET } from '../time/offset.ts';
import { ANALYSIS, READINGS } from './analysisNames.ts';
import { renamed } from './renamed.ts';

export interface JsonOptions {
  /** False leaves the single readings out, for what only needs the numbers made of them. */
  readings?: boolean;
}

/** Where the readings go. With its name and a quote in it: no text of a person, once escaped, can look like this. */
const HOLE = '"readings": "@"';

/**
 * The analysis as JSON for programs, in pieces that follow one another: names with their units, readings as one array a column
 * on one line each, numbers unrounded, unknown numbers null. The order of names is fixed, so the same analysis gives the same
 * text.
 */
export function analysisJson(analysis: Analysis, { readings = true }: JsonOptions = {}): string[] {
  const { readings: whole, json } = withUnits(analysis);
  const inner = readings ? '@' : { count: whole.count };
  const text = `${JSON.stringify({ ...json, timeline: { ...json.timeline, readings: inner } }, null, 1)}\n`;
  if (!readings) return [text];
  const at = text.indexOf(HOLE);
  return [text.slice(0, at), '"readings": {\n', ...columns(whole), '\n  }', text.slice(at + HOLE.length)];
}

/** The analysis under the names of its file, which the published schema holds; the readings apart. */
function withUnits(analysis: Analysis): { readings: Readings; json: AnalysisJson } {
  // What was set aside goes into a table of its own: it may be longer than all the rest.
  const { ok: _, timeline: whole, setAside: ___, ...rest } = analysis;
  // The timeline's own issues stand among those of the analysis already.
  const { issues: __, placed: ____, readings, ...timeline } = whole;
  const notes = timeline.notes.map((note) => ({ ...note, offset: note.offset === NO_OFFSET ? null : note.offset }));
  const stood = { ...rest, timeline: { ...timeline, notes, readings: { count: readings.count } } };
  return { readings, json: renamed(stood, ANALYSIS) };
}

function columns(readings: Readings): string[] {
  return Object.entries(renamed(readings, READINGS)).flatMap(([name, value], i) => [
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
