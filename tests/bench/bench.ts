import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import manifest from '../../package.json' with { type: 'json' };
import { readKinds } from './kinds.ts';
import { makeInputs, workloads } from './workloads.ts';

/**
 * Prints how fast each part is. Every workload runs in a process of its own, so that its peak memory is its own, and
 * bundled as the command is: a loader of TypeScript would slow it by a third. Cold times are those of the built command, from
 * start to files on the disk.
 */
const COLD_RUNS = 7;
/** Run before the command: its own process tells how much memory it took at most. */
const TELL = 'process.on("exit",()=>require("node:fs").writeSync(2,"peak "+process.resourceUsage().maxRSS))';
const home = fileURLToPath(new URL('../../', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'daybands-bench-'));

const [bundle, parts] = ['one', 'parts'].map((name) => join(folder, `${name}.js`)) as [string, string];
writeFileSync(join(folder, 'package.json'), '{"type":"module"}');
await build({
  absWorkingDir: home,
  entryPoints: ['tests/bench/one.ts', 'tests/bench/parts.ts'],
  outdir: folder,
  bundle: true,
  platform: 'node',
  format: 'esm',
  legalComments: 'none',
  logLevel: 'warning',
  external: Object.keys(manifest.dependencies).filter((name) => name !== 'zod'),
  banner: {
    js: `import{createRequire as $require}from'node:module';const require=$require(${JSON.stringify(`${home}package.json`)});`,
  },
});

const rows = workloads.map((workload, i) => {
  const one = JSON.parse(
    execFileSync(process.execPath, [bundle, String(i)], {
      cwd: home,
      encoding: 'utf8',
    }),
  ) as Record<string, number>;
  const files = makeInputs(workload).map(({ name, bytes }) => {
    const path = join(folder, name);
    writeFileSync(path, bytes);
    return path;
  });
  return { workload: workload.name, ...one, ...cold(files) };
});
console.table(rows);
console.log(execFileSync(process.execPath, [parts], { cwd: home, encoding: 'utf8' }));
rmSync(folder, { recursive: true, force: true });
console.table(await readKinds());

/** Seconds (the median of some runs) and megabytes (the most of them) of the built command. */
function cold(files: string[]): Record<string, number> {
  const tell = join(folder, 'tell.cjs');
  writeFileSync(tell, TELL);
  const runs = Array.from({ length: COLD_RUNS }, () => {
    const start = performance.now();
    const run = spawnSync(
      process.execPath,
      ['-r', tell, 'dist/daybands.js', 'report', ...files, '--out', join(folder, 'out'), '--date', '2027-06-01'],
      { cwd: home, encoding: 'utf8' },
    );
    if (run.status !== 0) throw new Error(run.stdout + run.stderr);
    return { ms: performance.now() - start, kB: Number(/peak (\d+)/.exec(run.stderr)?.[1]) };
  });
  const times = runs.map(({ ms }) => ms).sort((a, b) => a - b);
  return {
    'cold s': Math.round(times[COLD_RUNS >> 1]!) / 1000,
    'cold best s': Math.round(times[0]!) / 1000,
    'cold peak MB': Math.round(Math.max(...runs.map(({ kB }) => kB)) / 1000),
  };
}
