import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const home = fileURLToPath(new URL('../..', import.meta.url));

/** Rows of the tables in a page that begin with a number, as their cells. */
export const numberedRows = (page: string): string[][] =>
  readFileSync(`${home}${page}`, 'utf8')
    .split('\n')
    .filter((line) => /^\| \d+ \|/.test(line))
    .map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );
