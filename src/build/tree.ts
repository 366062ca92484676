import { readdirSync, readFileSync } from 'node:fs';
import type { Tree } from './recipes.ts';

/** The tree this file stands in, without what is built or fetched. */
export const tree: Tree = {
  paths: ['src', 'templates', 'docs', 'tests/findings'].flatMap((folder) =>
    readdirSync(new URL(`../../${folder}`, import.meta.url), { recursive: true, encoding: 'utf8' }).map(
      (path) => `${folder}/${path}`,
    ),
  ),
  text: (path) => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8'),
};
