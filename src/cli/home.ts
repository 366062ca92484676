import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

// The built command stands in dist/, the source in src/cli/: both find the package's own folder from where they stand.
const home = new URL(import.meta.url.endsWith('/src/cli/home.ts') ? '../../' : '../', import.meta.url);

/** Bytes of a file of this package, e.g. `dist/fonts/…`. Throws as the file system does. */
export const ownFile = (path: string): Buffer => readFileSync(new URL(path, home));

export const ownPath = (path: string): string => fileURLToPath(new URL(path, home));

/** The words of a language as parsed JSON; their shape is checked when the project is tested, not at every start. */
export const words = (language: string): Record<string, unknown> =>
  JSON.parse(ownFile(`templates/words/${language}.json`).toString('utf8'));

export interface FontFiles {
  regular: Buffer;
  semibold: Buffer;
}

export const fonts = (): FontFiles => ({
  regular: ownFile('dist/fonts/IBMPlexSans-Regular.ttf'),
  semibold: ownFile('dist/fonts/IBMPlexSans-SemiBold.ttf'),
});
