import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname } from 'node:path';
import { constants, Script } from 'node:vm';
import { forOneReport } from './engine.ts';

/**
 * Compiles the bundled program, with what the engine kept of an earlier compilation where that still fits (same
 * program, same engine); where it does not, the engine compiles anew and nothing else changes.
 */
export function compile(program: string, kept?: Buffer): Script {
  forOneReport();
  // The bundle is plain ASCII, which needs no decoding.
  const source = readFileSync(program, 'latin1');
  return new Script(`(function(require,__filename,__dirname){${source}\n})`, {
    filename: program,
    importModuleDynamically: constants.USE_MAIN_CONTEXT_DEFAULT_LOADER,
    ...(kept === undefined ? {} : { cachedData: kept }),
  });
}

export function run(script: Script, program: string): void {
  script.runInThisContext()(createRequire(program), program, dirname(program));
}
