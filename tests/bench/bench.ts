import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readKinds } from './kinds.ts';
import { makeInputs, workloads } from './workloads.ts';

/**
 * Prints how fast each part is. Every workload runs in a process of its own, so that its peak memory is its own; cold
 * times are those of the built command, from start to files on the disk.
 */
const COLD_RUNS = 7;
const home = fileURLToPath(new URL('../../', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'daybands-bench-'));

const rows = workloads.map((workload, i) => {
  const one = JSON.parse(
    execFileSync(process.execPath, ['--expose-gc', '--import', 'tsx', join(home, 'tests/bench/one.ts'), String(i)], {
      cwd: home,
      encoding: 'utf8',
    }),
  ) as Record<string, number>;
  const files = makeInputs(workload).map(({ name, bytes }) => {
    const path = join(folder, name);
    writeFileSync(path, bytes);
    return path;
  });
  return { workload: workload.name, ...one, 'cold s': median(files, COLD_RUNS) };
});
rmSync(folder, { recursive: true, force: true });
console.table(rows);
console.table(await readKinds());

function median(files: string[], runs: number): number {
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    const run = spawnSync(
      process.execPath,
      ['dist/daybands.js', 'report', ...files, '--out', join(folder, 'out'), '--date', '2027-06-01'],
      {
        cwd: home,
        encoding: 'utf8',
      },
    );
    if (run.status !== 0) throw new Error(run.stdout + run.stderr);
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return Math.round(times[runs >> 1]!) / 1000;
}
