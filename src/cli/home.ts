import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import manifest from '../../package.json' with { type: 'json' };
import { once } from '../once.ts';
import type { Cuts, PdfFonts } from '../writers/pdf/index.ts';
import { reasonOf, WrongUse } from './exits.ts';
import { faceOf } from './faces.ts';

// The built command stands in dist/, the source in src/cli/: both find the package's own folder from where they stand.
const inTree = import.meta.url.endsWith('/src/cli/home.ts');
const home = new URL(inTree ? '../../' : '../', import.meta.url);

/** Bytes of a file of this package, e.g. `dist/fonts/…`. Throws WrongUse where it is missing, else as the file system does. */
export function ownFile(path: string): Buffer {
  try {
    return readFileSync(new URL(path, home));
  } catch (error) {
    if (reasonOf(error) !== 'ENOENT') throw error;
    throw new WrongUse('incomplete', { path, run: inTree ? 'source' : 'built' });
  }
}

export const ownPath = (path: string): string => fileURLToPath(new URL(path, home));

/** The words of a language as parsed JSON, read once; their shape is checked when the project is tested, not at every start. */
export const words = once(
  (language: string): Record<string, unknown> =>
    JSON.parse(ownFile(`templates/words/${language}.json`).toString('utf8')),
);

/** What a worker thread runs. Throws WrongUse in the tree: no thread reads TypeScript. */
export function threadFile(): string {
  if (inTree) throw new WrongUse('builtOnly');
  return fileURLToPath(new URL('./thread.js', import.meta.url));
}

/** Languages there are words for. */
export const languages = (): string[] =>
  readdirSync(new URL('templates/words/', home))
    .filter((name) => name.endsWith('.json'))
    .map((name) => name.slice(0, -'.json'.length));

/** Of this program. */
export const { version } = manifest;

/** Read when first asked for, and once: the writer knows a face it has parsed by its bytes. */
const face = once((name: string): Buffer => ownFile(`dist/fonts/${name}`));

/** Without a face a report still comes out, with a mark where its characters would stand. */
const spare = once((name: string): Buffer | undefined => {
  try {
    return face(name);
  } catch {
    return undefined;
  }
});

export const fonts = (): PdfFonts => ({
  regular: face('IBMPlexSans-Regular.ttf'),
  semibold: face('IBMPlexSans-SemiBold.ttf'),
  more: (script, strong) => spare(faceOf(script, strong)),
});

/** The faces of reports as the build has cut and packed them. */
export const cuts = (): Cuts => ({
  regular: spare('IBMPlexSans-Regular.cut'),
  semibold: spare('IBMPlexSans-SemiBold.cut'),
});
