import { utf8 } from '../../bytes/text.ts';
/** Where the elements of one list stand: byte offsets and physical lines (from 1). */
export interface Places {
  count: number;
  from: Int32Array;
  to: Int32Array;
  line: Int32Array;
}

export interface Lists {
  /** The outermost array under '', arrays directly in the outermost object by key. */
  byKey: Map<string, Places>;
  /** All of them in order, also one whose key comes twice. */
  all: Places[];
}

function newPlaces(): Places {
  return { count: 0, from: new Int32Array(16), to: new Int32Array(16), line: new Int32Array(16) };
}

function addPlace(places: Places, from: number, to: number, line: number): void {
  if (places.count === places.from.length) {
    places.from = grown(places.from);
    places.to = grown(places.to);
    places.line = grown(places.line);
  }
  places.from[places.count] = from;
  places.to[places.count] = to;
  places.line[places.count++] = line;
}

function grown(array: Int32Array): Int32Array {
  const bigger = new Int32Array(array.length * 2);
  bigger.set(array);
  return bigger;
}

/** Finds the elements of the outer lists by brackets and quotes alone; what is no JSON gives places that do not parse. */
export function findLists(bytes: Uint8Array): Lists {
  const lists: Lists = { byKey: new Map(), all: [] };
  let depth = 0;
  let line = 1;
  let collecting: Places | undefined;
  let collectDepth = 0;
  let expecting = false;
  // The last string outside of lists: before one, its key.
  let keyFrom = 0;
  let keyTo = 0;
  let stringFrom = -1;
  for (let i = 0; i < bytes.length; i++) {
    const b = bytes[i]!;
    if (b === 0x0a) {
      line++;
      continue;
    }
    if (stringFrom >= 0) {
      if (b === 0x5c) i++;
      else if (b === 0x22) {
        if (depth === 1) {
          keyFrom = stringFrom;
          keyTo = i;
        }
        stringFrom = -1;
      }
      continue;
    }
    if (b <= 0x20) continue;
    if (expecting && collecting && depth === collectDepth && b !== 0x5d) {
      addPlace(collecting, i, bytes.length, line);
      expecting = false;
    }
    if (b === 0x22) stringFrom = i + 1;
    else if (b === 0x7b || b === 0x5b) {
      depth++;
      if (b === 0x5b && ((depth === 1 && lists.all.length === 0) || (depth === 2 && !collecting))) {
        collecting = newPlaces();
        collectDepth = depth;
        expecting = true;
        lists.byKey.set(depth === 1 ? '' : keyText(bytes.subarray(keyFrom, keyTo)), collecting);
        lists.all.push(collecting);
      }
    } else if (b === 0x7d || b === 0x5d) {
      if (collecting && b === 0x5d && depth === collectDepth) {
        if (!expecting && collecting.count > 0) collecting.to[collecting.count - 1] = i;
        collecting = undefined;
        collectDepth = 0;
      }
      depth--;
    } else if (b === 0x2c && collecting && depth === collectDepth) {
      if (collecting.count > 0) collecting.to[collecting.count - 1] = i;
      expecting = true;
    }
  }
  return lists;
}

function keyText(bytes: Uint8Array): string {
  const text = utf8(bytes);
  if (!text.includes('\\')) return text;
  try {
    return String(JSON.parse(`"${text}"`));
  } catch {
    return text;
  }
}

/** Lines that are not blank, whether they end with LF, CRLF or CR. */
export function findLines(bytes: Uint8Array): Places {
  const places = newPlaces();
  let line = 1;
  let from = 0;
  for (let i = 0; i <= bytes.length; i++) {
    const lf = bytes.indexOf(0x0a, i);
    const stop = lf < 0 ? bytes.length : lf;
    // A lone CR ends a line too: inside a JSON text it can only be a blank.
    let cr = bytes.subarray(from, stop).indexOf(0x0d);
    while (cr >= 0 && from + cr + 1 < stop) {
      addLine(places, bytes, from, from + cr, line++);
      from += cr + 1;
      cr = bytes.subarray(from, stop).indexOf(0x0d);
    }
    addLine(places, bytes, from, stop, line++);
    from = stop + 1;
    i = stop;
  }
  return places;
}

function addLine(places: Places, bytes: Uint8Array, from: number, to: number, line: number): void {
  for (let i = from; i < to; i++) {
    if (bytes[i]! <= 0x20) continue;
    addPlace(places, from, to, line);
    return;
  }
}
