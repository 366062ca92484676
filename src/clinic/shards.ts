import { sha256 } from '../bytes/hash.ts';

/** One of `of` parts of a folder's people, numbered from 1. */
export interface Shard {
  index: number;
  of: number;
}

/**
 * Which part a code belongs to, 1 to `of`: the same on every machine and in every run, whoever else is in the folder, so
 * parts need nobody to share them out.
 */
export function shardOf(code: string, of: number): number {
  return (new DataView(sha256(code).slice().buffer).getUint32(0) % of) + 1;
}

export const inShard = (code: string, { index, of }: Shard): boolean => shardOf(code, of) === index;

/** `3/8`; undefined when it is not of that form, or the first is not one of the second. */
export function parseShard(text: string): Shard | undefined {
  const found = /^(\d{1,5})\/(\d{1,5})$/.exec(text);
  if (!found) return undefined;
  const [index, of] = [Number(found[1]), Number(found[2])];
  return index >= 1 && index <= of ? { index, of } : undefined;
}
