import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writePeople } from '../support/people.ts';

/**
 * Ends a run over a folder at random moments, as a power cut would, and looks whether the next one goes on to the same bytes:
 * `tsx tests/bench/kills.ts [kills] [people] [seed]`. A folder is killed until it is whole, and then begun anew. Further pages
 * and visit files are made too.
 */
const [kills = 100, people = 12, seed = 1] = process.argv.slice(2).map(Number);
const command = process.env.DAYBANDS ?? fileURLToPath(new URL('../../dist/daybands.js', import.meta.url));
const at = mkdtempSync(join(tmpdir(), 'daybands-kills-'));
writePeople(join(at, 'in'), people, { days: 2, step: 30 });

let state = seed >>> 0;
/** 0 to 1 (a linear congruential step, Numerical Recipes' constants, from memory). */
function random(): number {
  state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
  return state / 2 ** 32;
}

/** Runs to the end, or for so long; gives whether it ended by itself, and the milliseconds it took. */
function run(out: string, killAfter?: number): Promise<{ whole: boolean; took: number }> {
  const start = performance.now();
  const args = [command, 'clinic', join(at, 'in'), '--out', join(at, out), '--further', '--date', '2026-06-01'];
  const child = spawn(process.execPath, args, { stdio: 'ignore' });
  const timer = killAfter === undefined ? undefined : setTimeout(() => child.kill('SIGKILL'), killAfter);
  return new Promise((done) => {
    child.on('exit', (code) => {
      clearTimeout(timer);
      done({ whole: code === 0, took: performance.now() - start });
    });
  });
}

/** Every file of a folder of results by its hash, but what tells of the run itself. */
function hashes(out: string): Map<string, string> {
  const found = new Map<string, string>();
  for (const path of readdirSync(join(at, out), { recursive: true, encoding: 'utf8' }).sort()) {
    if (/run-log\.jsonl$|(^|\/)\./.test(path) || !statSync(join(at, out, path)).isFile()) continue;
    found.set(
      path,
      createHash('sha256')
        .update(readFileSync(join(at, out, path)))
        .digest('hex'),
    );
  }
  return found;
}

/** Whatever has its name is whole. */
function halves(out: string): string[] {
  const names = existsSync(join(at, out)) ? readdirSync(join(at, out), { recursive: true, encoding: 'utf8' }) : [];
  return names.filter((path) => {
    if (/(^|\/)\./.test(path)) return false;
    if (path.endsWith('.pdf'))
      return !readFileSync(join(at, out, path))
        .subarray(-6)
        .toString()
        .includes('%%EOF');
    if (!path.endsWith('.json')) return false;
    try {
      JSON.parse(readFileSync(join(at, out, path), 'utf8'));
      return false;
    } catch {
      return true;
    }
  });
}

const { took } = await run('fresh');
const expected = hashes('fresh');
let [done, rounds, differ, half] = [0, 0, 0, 0];
while (done < kills) {
  const { whole } = await run('out', took * 1.05 * random());
  if (!whole) {
    done++;
    half += halves('out').length;
    continue;
  }
  rounds++;
  differ += compared();
  rmSync(join(at, 'out'), { recursive: true, force: true });
}
await run('out');
differ += compared();
console.log(
  `${done} kills, ${rounds + 1} folders brought to their end; files that differ: ${differ}; half files: ${half}`,
);
rmSync(at, { recursive: true, force: true });
process.exitCode = differ + half > 0 ? 1 : 0;

function compared(): number {
  const found = hashes('out');
  const names = new Set([...expected.keys(), ...found.keys()]);
  return [...names].filter((name) => expected.get(name) !== found.get(name)).length;
}
