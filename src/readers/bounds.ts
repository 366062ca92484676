/** Ten years of readings every minute are 5 million rows; more than this in one file is a mistake, or meant to fill memory (ours). */
export const MOST_LINES = 12_000_000;
/** A record of another system takes some ten objects of JSON; so many of them are more than any such export (ours). */
const MOST_OBJECTS = 40_000_000;

const LF = 0x0a;
const CR = 0x0d;
const BRACE = 0x7b;

/** Whether a text has more lines or objects than could be kept in memory. Each takes a byte at least, so most texts need no count. */
export function tooLong(bytes: Uint8Array): boolean {
  if (bytes.length <= MOST_LINES) return false;
  let lines = 0;
  let objects = 0;
  for (let i = 0; i < bytes.length; i++) {
    const byte = bytes[i];
    if (byte === LF || (byte === CR && bytes[i + 1] !== LF)) lines++;
    else if (byte === BRACE) objects++;
  }
  return lines > MOST_LINES || objects > MOST_OBJECTS;
}
