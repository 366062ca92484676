import { execFileSync } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const home = fileURLToPath(new URL('../..', import.meta.url));

/** Builds the command when a source is newer than it, so that no test ever tries yesterday's program. */
export function setup(): void {
  const newest = (folder: string): number =>
    Math.max(
      ...readdirSync(join(home, folder), { recursive: true, encoding: 'utf8' }).map(
        (path) => statSync(join(home, folder, path)).mtimeMs,
      ),
    );
  const built = statSync(join(home, 'dist/daybands.js'), { throwIfNoEntry: false })?.mtimeMs ?? 0;
  if (built < newest('src')) execFileSync('npm', ['run', '--silent', 'build'], { cwd: home, stdio: 'inherit' });
}
