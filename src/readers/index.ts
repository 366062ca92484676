import type { Input, ReadFile, ReadSettings } from '../model/input.ts';
import { readDelimited, recogniseDelimited } from './delimited.ts';

/** One input kind. Readers never throw and never drop a record. */
export interface Reader {
  id: string;
  /** How sure it is, 0 to 1, from the first bytes and the name. */
  recognise(head: Uint8Array, name: string): number;
  read(input: Input, settings: ReadSettings): ReadFile;
}

/** Every input kind; the surest one reads, the last of equals as the fallback. */
export const readers: Reader[] = [{ id: 'delimited', recognise: recogniseDelimited, read: readDelimited }];

const HEAD = 65_536;

/** Reads one input by the reader that recognises it best. Total: any bytes give a ReadFile. */
export function readInput(input: Input, settings: ReadSettings): ReadFile {
  const head = input.bytes.subarray(0, HEAD);
  let best = readers[readers.length - 1]!;
  let sure = 0;
  for (const reader of readers) {
    const how = reader.recognise(head, input.name);
    if (how > sure) {
      best = reader;
      sure = how;
    }
  }
  return best.read(input, settings);
}

export function readInputs(inputs: Input[], settings: ReadSettings): ReadFile[] {
  return inputs.map((input) => readInput(input, settings));
}
