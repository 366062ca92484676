import type { Analysis } from '../analyse.ts';
import type { Readings } from '../model/timeline.ts';

export interface JsonOptions {
  /** False leaves the single readings out, for what only needs the numbers made of them. */
  readings?: boolean;
}

/** Where the readings go. With its name and a quote in it: no text of a person, once escaped, can look like this. */
const HOLE = '"readings": "@"';

/**
 * The analysis as JSON for programs: readings as one array a column on one line each, numbers unrounded, unknown
 * numbers null. The order of names is fixed, so the same analysis gives the same text.
 */
export function analysisJson(analysis: Analysis, { readings = true }: JsonOptions = {}): string {
  // What was set aside goes into a table of its own: it may be longer than all the rest.
  const { ok: _, timeline: whole, setAside: ___, ...rest } = analysis;
  // The timeline's own issues stand among those of the analysis already.
  const { issues: __, ...timeline } = whole;
  const inner = readings ? '@' : { count: timeline.readings.count };
  const text = `${JSON.stringify({ ...rest, timeline: { ...timeline, readings: inner } }, null, 1)}\n`;
  // A function, so that a `$` in the data is no pattern of replacement.
  return readings ? text.replace(HOLE, () => `"readings": ${columns(whole.readings)}`) : text;
}

function columns(readings: Readings): string {
  const lines = Object.entries(readings).map(([name, value]) => {
    const content = ArrayBuffer.isView(value) ? Array.from(value as Float64Array) : value;
    return `   "${name}": ${JSON.stringify(content)}`;
  });
  return `{\n${lines.join(',\n')}\n  }`;
}
