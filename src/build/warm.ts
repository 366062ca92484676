import { writeFileSync } from 'node:fs';
import { compile, run } from '../cli/load.ts';

/** `warm program cache arguments…`: runs the program once and keeps what the engine compiled for it. */
const [program, cache, ...args] = process.argv.slice(2) as [string, string, ...string[]];
const script = compile(program);
process.argv = [process.execPath, program, ...args];
process.on('exit', () => writeFileSync(cache, script.createCachedData()));
run(script, program);
