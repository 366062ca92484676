import { spawnSync } from 'node:child_process';
import { test } from 'vitest';

/** Set by `.ci/run`, which installs all that tests ask for: what is missing there is a failure, and more browsers are tried. */
export const EVERY_TOOL = process.env.EVERY_TOOL === '1';

/** Whether a program of the machine can be run. */
const present = (tool: string): boolean => spawnSync(tool, ['--version'], { stdio: 'ignore' }).error === undefined;

/** `test` where the program is installed; elsewhere a skip, or a failure, whose name says what is missing. */
export function needs(tool: string, there = present(tool)): typeof test | typeof test.skip {
  if (there) return test;
  const missing = (name: string) => `${name} (not run: ${tool} is not installed)`;
  if (!EVERY_TOOL) return ((name: string) => test.skip(missing(name), () => {})) as typeof test.skip;
  return ((name: string) => {
    test(missing(name), () => {
      throw new Error(`${tool} is not installed, and EVERY_TOOL is set`);
    });
  }) as typeof test.skip;
}

/** Runs a program on bytes given as its input file and returns what it prints; throws when it complains. */
export function run(tool: string, args: readonly string[]): string {
  const { status, stdout, stderr } = spawnSync(tool, args, { encoding: 'utf8', maxBuffer: 1 << 26 });
  if (status !== 0) throw new Error(`${tool} ended with ${status}: ${stdout}${stderr}`);
  return stdout;
}
