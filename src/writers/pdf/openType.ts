/**
 * The few structures of an OpenType font that plain text needs, read in place (OpenType specification 1.9, chapters
 * "OpenType Layout Common Table Formats", "GPOS", "GSUB"). All offsets are bytes from the start of the file.
 */

export interface Lookup {
  type: number;
  /** Where its subtables start; extension subtables are already followed. */
  subtables: number[];
}

/** Start of a table of the font, or undefined when it has none. */
export function tableAt(view: DataView, tag: string): number | undefined {
  const count = view.getUint16(4);
  for (let i = 0; i < count; i++) {
    const entry = 12 + i * 16;
    if (tagAt(view, entry) === tag) return view.getUint32(entry + 8);
  }
  return undefined;
}

/**
 * Glyph of a character of the basic plane, 0 where the font has none (table "cmap", format 4: segments of codes). Null
 * for a font without such a table.
 */
export function glyphsByCode(view: DataView): ((code: number) => number) | null {
  const cmap = tableAt(view, 'cmap');
  if (cmap === undefined) return null;
  let at: number | undefined;
  for (let i = 0; i < view.getUint16(cmap + 2); i++) {
    const record = cmap + 4 + i * 8;
    const windows = view.getUint16(record) === 3 && view.getUint16(record + 2) === 1;
    const subtable = cmap + view.getUint32(record + 4);
    if ((windows || view.getUint16(record) === 0) && view.getUint16(subtable) === 4) at = subtable;
  }
  if (at === undefined) return null;
  const ends = at + 14;
  const bytes = view.getUint16(at + 6);
  const [starts, deltas, offsets] = [ends + bytes + 2, ends + 2 * bytes + 2, ends + 3 * bytes + 2];
  return (code) => {
    let i = 0;
    while (i < bytes && view.getUint16(ends + i) < code) i += 2;
    if (i >= bytes || view.getUint16(starts + i) > code) return 0;
    const offset = view.getUint16(offsets + i);
    const from = offset === 0 ? code : view.getUint16(offsets + i + offset + 2 * (code - view.getUint16(starts + i)));
    return offset !== 0 && from === 0 ? 0 : (from + view.getUint16(deltas + i)) & 0xffff;
  };
}

/** Lookups that the given features switch on in Latin text, by feature; in the order in which they apply. */
export function latinLookups(view: DataView, table: number, extensionType: number): Map<string, Lookup[]> {
  const features = table + view.getUint16(table + 6);
  const lookups = table + view.getUint16(table + 8);
  const system = latinSystem(view, table + view.getUint16(table + 4));
  const found = new Map<string, Lookup[]>();
  if (system === undefined) return found;
  const indexes = new Map<string, Set<number>>();
  for (let i = 0; i < view.getUint16(system + 4); i++) {
    const record = features + 2 + view.getUint16(system + 6 + i * 2) * 6;
    const feature = features + view.getUint16(record + 4);
    const tag = tagAt(view, record);
    const known = indexes.get(tag) ?? new Set();
    for (let j = 0; j < view.getUint16(feature + 2); j++) known.add(view.getUint16(feature + 4 + j * 2));
    indexes.set(tag, known);
  }
  for (const [tag, set] of indexes) {
    const inOrder = [...set].sort((a, b) => a - b);
    found.set(
      tag,
      inOrder.map((index) => readLookup(view, lookups + view.getUint16(lookups + 2 + index * 2), extensionType)),
    );
  }
  return found;
}

function latinSystem(view: DataView, scripts: number): number | undefined {
  let fallback: number | undefined;
  for (let i = 0; i < view.getUint16(scripts); i++) {
    const record = scripts + 2 + i * 6;
    const tag = tagAt(view, record);
    if (tag !== 'latn' && tag !== 'DFLT') continue;
    const script = scripts + view.getUint16(record + 4);
    const offset = view.getUint16(script);
    if (offset === 0) continue;
    if (tag === 'latn') return script + offset;
    fallback = script + offset;
  }
  return fallback;
}

function readLookup(view: DataView, at: number, extensionType: number): Lookup {
  let type = view.getUint16(at);
  const subtables: number[] = [];
  for (let i = 0; i < view.getUint16(at + 4); i++) {
    const subtable = at + view.getUint16(at + 6 + i * 2);
    if (view.getUint16(at) === extensionType) {
      type = view.getUint16(subtable + 2);
      subtables.push(subtable + view.getUint32(subtable + 4));
    } else {
      subtables.push(subtable);
    }
  }
  return { type, subtables };
}

/** Place of a glyph in a coverage table; -1 when it is not covered. */
export function coverageIndex(view: DataView, at: number, glyph: number): number {
  const count = view.getUint16(at + 2);
  if (view.getUint16(at) === 1) {
    const i = lastFrom(view, at + 4, count, 2, glyph);
    return i >= 0 && view.getUint16(at + 4 + i * 2) === glyph ? i : -1;
  }
  const i = lastFrom(view, at + 4, count, 6, glyph);
  const range = at + 4 + i * 6;
  if (i < 0 || glyph > view.getUint16(range + 2)) return -1;
  return view.getUint16(range + 4) + glyph - view.getUint16(range);
}

/** Class of a glyph; 0 when the table does not name it. */
export function classOf(view: DataView, at: number, glyph: number): number {
  if (view.getUint16(at) === 1) {
    const index = glyph - view.getUint16(at + 2);
    return index >= 0 && index < view.getUint16(at + 4) ? view.getUint16(at + 6 + index * 2) : 0;
  }
  const i = lastFrom(view, at + 4, view.getUint16(at + 2), 6, glyph);
  const range = at + 4 + i * 6;
  return i >= 0 && glyph <= view.getUint16(range + 2) ? view.getUint16(range + 4) : 0;
}

/** Of records in order of the glyph they begin with, the last that begins at or before `glyph`; -1 when none does. */
function lastFrom(view: DataView, at: number, count: number, size: number, glyph: number): number {
  let [low, high] = [0, count];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (view.getUint16(at + middle * size) <= glyph) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

const tagAt = (view: DataView, at: number): string =>
  String.fromCharCode(view.getUint8(at), view.getUint8(at + 1), view.getUint8(at + 2), view.getUint8(at + 3));
