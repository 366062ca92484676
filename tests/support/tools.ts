import { spawnSync } from 'node:child_process';
import { test } from 'vitest';

/** Whether a program of the machine can be run. */
const present = (tool: string): boolean => spawnSync(tool, ['--version'], { stdio: 'ignore' }).error === undefined;

/** `test` where the program is installed; elsewhere a skip whose name says what is missing. */
export function needs(tool: string): (name: string, body: () => void | Promise<void>) => void {
  if (present(tool)) return test;
  return (name) => test.skip(`${name} (not run: ${tool} is not installed)`, () => {});
}

/** Runs a program on bytes given as its input file and returns what it prints; throws when it complains. */
export function run(tool: string, args: readonly string[]): string {
  const { status, stdout, stderr } = spawnSync(tool, args, { encoding: 'utf8', maxBuffer: 1 << 26 });
  if (status !== 0) throw new Error(`${tool} ended with ${status}: ${stdout}${stderr}`);
  return stdout;
}
