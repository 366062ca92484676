import makeBidi, { type Bidi } from 'bidi-js';

/** Its types describe the module form; Node loads the older one, whose export is the factory itself. */
const factory = makeBidi as unknown as () => Bidi;

/** Building its tables costs some milliseconds, which reports in one direction never pay. */
let bidi: Bidi | undefined;

/** Embedding levels of one line, a number a UTF-16 unit: odd runs from right to left (Unicode annex 9). */
export function levelsOf(line: string, base: 'ltr' | 'rtl'): Uint8Array {
  bidi ??= factory();
  return bidi.getEmbeddingLevels(line, base).levels;
}

/** The same character as it stands in text from right to left: `(` becomes `)`. */
export function mirrored(text: string): string {
  bidi ??= factory();
  let out = '';
  for (const letter of text) out += bidi.getMirroredCharacter(letter) ?? letter;
  return out;
}

/**
 * Runs in the order in which they stand on paper, from left to right: from the highest level down to 1 every stretch
 * of runs at that level or above is turned round (rule L2 of Unicode annex 9).
 */
export function inVisualOrder<T extends { level: number }>(runs: readonly T[]): T[] {
  const order = [...runs];
  const highest = Math.max(0, ...runs.map(({ level }) => level));
  for (let level = highest; level >= 1; level--) {
    for (let from = 0; from < order.length; from++) {
      if (order[from]!.level < level) continue;
      let to = from + 1;
      while (to < order.length && order[to]!.level >= level) to++;
      order.splice(from, to - from, ...order.slice(from, to).reverse());
      from = to;
    }
  }
  return order;
}
