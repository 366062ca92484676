import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, truncateSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writePeople } from '../support/people.ts';

/**
 * Ends a run over a folder at random moments, as a power cut would, and looks whether the next one goes on to the same bytes:
 * `tsx tests/bench/kills.ts [kills] [people] [seed] [once|ready]`. Further pages and visit files are made, and compared with those
 * of an earlier run (`--since`). After a kill now and then a file is cut short, a record or a paper. `once`: a folder is killed until it is
 * whole, and then begun anew. `ready`: the folder is kept ready (`--keep-ready`), killed up to five times, and then let come to rest.
 */
const [kills = 100, people = 12, seed = 1] = process.argv.slice(2, 5).map(Number);
const mode = process.argv[5] ?? 'once';
const command = process.env.DAYBANDS ?? fileURLToPath(new URL('../../dist/daybands.js', import.meta.url));
const at = mkdtempSync(join(tmpdir(), 'daybands-kills-'));
writePeople(join(at, 'in'), people, { days: 4, step: 30 });
const CUT = 0.25;
const MOST_IN_A_ROW = 5;

let state = seed >>> 0;
/** 0 to 1 (a linear congruential step, Numerical Recipes' constants, from memory). */
function random(): number {
  state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
  return state / 2 ** 32;
}

const ofAll = ['clinic', join(at, 'in'), '--further', '--date', '2026-06-01'];
const since = ['--since', join(at, 'before')];
/** Names of files that were cut since a folder was begun: no run left them so. */
const cut = new Set<string>();
const ready = mode === 'ready' ? ['--keep-ready', '--settle', '1'] : [];

/** Processor seconds that a process has used, all its threads together; the last figure where it has ended. */
function spentBy(pid: number, last: number): number {
  try {
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]!.split(' ');
    // utime and stime in hundredths of a second (proc(5)).
    return (Number(fields[11]) + Number(fields[12])) / 100;
  } catch {
    return last;
  }
}

/**
 * Runs to the end, or until it has used so many processor seconds, which fall alike on a quiet machine and a busy one; gives
 * whether it ended by itself, and the processor seconds to its end.
 */
function run(out: string, more: string[], killAfter?: number): Promise<{ whole: boolean; took: number }> {
  const ends = endsIn(out);
  const child = spawn(process.execPath, [command, ...ofAll, '--out', join(at, out), ...more], { stdio: 'ignore' });
  let [spent, ended] = [0, false];
  const looking = setInterval(() => {
    spent = spentBy(child.pid!, spent);
    if (killAfter !== undefined && spent >= killAfter) child.kill('SIGKILL');
    // A folder that is kept ready does not end by itself: it is asked to when a pass has.
    if (ended || !more.includes('--keep-ready') || endsIn(out) === ends) return;
    ended = true;
    if (killAfter === undefined) child.kill('SIGTERM');
  }, 5);
  return new Promise((done) => {
    child.on('exit', (code) => {
      clearInterval(looking);
      done({ whole: code === 0, took: spent });
    });
  });
}

/** How many runs over a folder of results have come to their end. */
function endsIn(out: string): number {
  const log = join(at, out, 'run-log.jsonl');
  return existsSync(log) ? readFileSync(log, 'utf8').split('"event":"end"').length - 1 : 0;
}

/** Cuts one file of the results in two, as a disk does that was not asked to write. */
function cutOne(out: string): void {
  const all = [...filesOf(out)].filter((path) => path.includes('/'));
  const path = all[Math.floor(random() * all.length)];
  if (path !== undefined) cut.add(path.slice(path.lastIndexOf('/') + 1));
  if (path !== undefined) truncateSync(join(at, out, path), statSync(join(at, out, path)).size >> 1);
}

const filesOf = (out: string): string[] =>
  existsSync(join(at, out))
    ? readdirSync(join(at, out), { recursive: true, encoding: 'utf8' })
        .filter((path) => statSync(join(at, out, path)).isFile())
        .sort()
    : [];

/** Every file of a folder of results by its hash, but what tells of the run itself. */
function hashes(out: string): Map<string, string> {
  const found = new Map<string, string>();
  for (const path of filesOf(out)) {
    if (path === 'run-log.jsonl') continue;
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
  return filesOf(out).filter((path) => {
    if (/(^|\/)\.[^/]*$/.test(path) || cut.has(path.slice(path.lastIndexOf('/') + 1))) return false;
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

await run('before', ['--to', '2026-02-03']);
const { took } = await run('fresh', [...since, ...ready]);
const expected = hashes('fresh');
let [done, rounds, differ, half, cuts] = [0, 0, 0, 0, 0];
let left = MOST_IN_A_ROW;
while (done < kills) {
  const { whole } = left > 0 ? await run('out', [...since, ...ready], took * 1.05 * random()) : { whole: true };
  if (!whole) {
    done++;
    if (mode === 'ready') left--;
    half += halves('out').length;
    if (random() < CUT) {
      cutOne('out');
      cuts++;
    }
    continue;
  }
  await toTheEnd();
}
await toTheEnd();
console.log(
  `${mode}: ${done} kills, ${cuts} files cut, ${rounds} folders brought to their end; files that differ: ${differ}; half files: ${half}`,
);
rmSync(at, { recursive: true, force: true });
process.exitCode = differ + half > 0 ? 1 : 0;

/** Lets the folder come to its end, compares every byte, and begins anew. */
async function toTheEnd(): Promise<void> {
  if (mode === 'ready' || !existsSync(join(at, 'out/worklist.csv')) || done >= kills)
    await run('out', [...since, ...ready]);
  rounds++;
  left = 1 + Math.floor(random() * MOST_IN_A_ROW);
  const found = hashes('out');
  const names = new Set([...expected.keys(), ...found.keys()]);
  const wrong = [...names].filter((name) => expected.get(name) !== found.get(name));
  console.error(`${done} kills so far`);
  if (wrong.length > 0) console.log(`differ: ${wrong.join(', ')}`);
  differ += wrong.length;
  rmSync(join(at, 'out'), { recursive: true, force: true });
  cut.clear();
}
