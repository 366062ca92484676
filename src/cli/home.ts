import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import manifest from '../../package.json' with { type: 'json' };
import { once } from '../once.ts';
import type { PdfFonts } from '../writers/pdf/index.ts';
import { faceOf } from './faces.ts';

// The built command stands in dist/, the source in src/cli/: both find the package's own folder from where they stand.
const inTree = import.meta.url.endsWith('/src/cli/home.ts');
const home = new URL(inTree ? '../../' : '../', import.meta.url);

/** Bytes of a file of this package, e.g. `dist/fonts/…`. Throws as the file system does. */
export const ownFile = (path: string): Buffer => readFileSync(new URL(path, home));

export const ownPath = (path: string): string => fileURLToPath(new URL(path, home));

/** The words of a language as parsed JSON; their shape is checked when the project is tested, not at every start. */
export const words = (language: string): Record<string, unknown> =>
  JSON.parse(ownFile(`templates/words/${language}.json`).toString('utf8'));

/** What a worker thread runs: beside this file when built, a source of its own in the tree. */
export const threadFile = (): string =>
  fileURLToPath(new URL(inTree ? './clinic/thread.ts' : './thread.js', import.meta.url));

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
