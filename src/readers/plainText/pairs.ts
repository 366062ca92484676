import { bytesOf } from '../../bytes/text.ts';
import { SHAPE } from '../times/stamp.ts';
import { linesIn, quoted, shapeOf, timeWords } from './lines.ts';

const PAIR = /([\p{L}_][\p{L}\p{N}_.-]*)\s*=\s*("[^"]*"|.*?)(?=[\s;,]+[\p{L}_][\p{L}\p{N}_.-]*\s*=|[\s;,]*$)/uy;
/** So many lines that are not blank must be a time and pairs (ours). */
const SHARE = 0.9;
const MOST_NAMES = 60;

/** Lines of a time and `name=value` pairs, such as programs log them, as a table with a line of names above it. */
export function partPairs(bytes: Uint8Array): Uint8Array | undefined {
  const lines = linesIn(bytes);
  const names: string[] = [];
  let of = 0;
  let count = 0;
  const rows = lines.map((line) => {
    if (line.trim() === '') return undefined;
    of++;
    const row = pairsOf(line);
    if (!row) return undefined;
    count++;
    for (const name of row.pairs.keys()) if (!names.includes(name)) names.push(name);
    return row;
  });
  // Of a time in front and another one by name nothing tells which is that of the value.
  if (rows.some((row) => row && [...row.pairs.values()].some((value) => shapeOf(value) === SHAPE.stamp)))
    return undefined;
  if (count < 2 || count < of * SHARE || names.length > MOST_NAMES) return undefined;
  const table = rows.map((row, i) =>
    row ? [row.when, ...names.map((name) => row.pairs.get(name) ?? '')].map(quoted).join('\t') : lines[i]!,
  );
  return bytesOf([['Time', ...names].map(quoted).join('\t'), ...table].join('\n'));
}

function pairsOf(line: string): { when: string; pairs: Map<string, string> } | undefined {
  const words = line.trim().split(/\s+/);
  const { count, shape } = timeWords(words);
  if (shape !== SHAPE.stamp) return undefined;
  const rest = words.slice(count).join(' ');
  const pairs = new Map<string, string>();
  PAIR.lastIndex = 0;
  for (let at = 0; at < rest.length; at = PAIR.lastIndex) {
    while (/[\s;,]/.test(rest[at] ?? '')) at++;
    PAIR.lastIndex = at;
    const pair = PAIR.exec(rest);
    // A name twice in a line says two things, and one cell can hold one.
    if (!pair || pairs.has(pair[1]!)) return undefined;
    pairs.set(pair[1]!, pair[2]!.replace(/^"|"$/g, ''));
  }
  return pairs.size > 0 ? { when: words.slice(0, count).join(' ').replace(/,$/, ''), pairs } : undefined;
}
