import { readFileSync, writeFileSync } from 'node:fs';
import { catalogues } from './catalogues.ts';

/** Writes the generated pages of docs/; with `--check` only says which are stale. */
const check = process.argv.includes('--check');
let stale = 0;
for (const [path, text] of Object.entries(catalogues())) {
  const file = new URL(`../../${path}`, import.meta.url);
  if (!check) {
    writeFileSync(file, text);
    console.log(`wrote ${path}`);
  } else if (current(file) !== text) {
    stale++;
    console.error(`${path} is stale: run npm run docs`);
  }
}
process.exitCode = stale === 0 ? 0 : 1;

function current(file: URL): string | null {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return null;
  }
}
