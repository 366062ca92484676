#!/usr/bin/env node
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { compile, run } from './load.ts';

// Cold, a third of a report's time went into compiling the program; `npm run build` keeps what was compiled.
const program = fileURLToPath(new URL('program.cjs', import.meta.url));
run(compile(program, kept()), program);

function kept(): Buffer | undefined {
  try {
    return readFileSync(new URL('program.cache', import.meta.url));
  } catch {
    return undefined;
  }
}
