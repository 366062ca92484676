import { type Dirent, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { clearParts } from '../halfWritten.ts';
import { lastOutcome } from './disk.ts';

/**
 * Names of the folders in a results folder that hold papers of people who are not in this run (`stems`), in order. An earlier run
 * made them; they are whoever's they are, and nobody takes them away but by hand.
 */
export function formerIn(out: string, stems: ReadonlySet<string>): string[] {
  const names = foldersIn(out).filter(
    (name) => !stems.has(name) && (lastOutcome(join(out, name))?.outputs.length ?? 0) > 0,
  );
  for (const name of names) clearParts(join(out, name));
  return names.sort();
}

function foldersIn(out: string): string[] {
  const isOne = (entry: Dirent): boolean => entry.isDirectory() && !entry.name.startsWith('.');
  try {
    return readdirSync(out, { withFileTypes: true })
      .filter(isOne)
      .map(({ name }) => name);
  } catch {
    return [];
  }
}
