import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writePeople } from '../support/people.ts';

/**
 * How fast a clinic's folder is worked through: `tsx tests/bench/clinic.ts [people] [days] [step] [threads…]`. The folder is made
 * once and kept in the system's temporary folder. Prints a row for each number of threads: both papers, the draft, the visit file.
 * `s to first`: until the first person's papers are done (they wait until everyone was looked at); `s to say`: until the command has
 * said how many it found.
 */
const [people = 1000, days = 14, step = 3, ...threads] = process.argv.slice(2).map(Number);
const home = fileURLToPath(new URL('../../', import.meta.url));
const folder = join(tmpdir(), `daybands-people-${people}-${days}-${step}`);
if (!existsSync(folder)) {
  mkdirSync(folder);
  writePeople(folder, people, { days, step });
}
const SAMPLE_EVERY = 500;

/** Memory of a process in MB, as Linux counts it. */
function memory(pid: number): number {
  try {
    return Number(/^VmRSS:\s+(\d+)/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? 0) / 1000;
  } catch {
    return 0;
  }
}

async function run(count: number) {
  const out = join(tmpdir(), `daybands-bench-${process.pid}`);
  const args = [join(home, 'dist/daybands.js'), 'clinic', folder, '--out', out, '--threads', String(count)];
  const before = spent();
  const start = performance.now();
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'ignore'] });
  let said = 0;
  child.stdout.on('data', () => {
    said ||= performance.now() - start;
  });
  let first = 0;
  const looking = setInterval(() => {
    if (first === 0 && reached(out)) first = performance.now() - start;
  }, 10);
  const samples: number[] = [];
  const sampling = setInterval(() => samples.push(memory(child.pid!)), SAMPLE_EVERY);
  await new Promise((done) => child.on('exit', done));
  clearInterval(sampling);
  clearInterval(looking);
  const seconds = (performance.now() - start) / 1000;
  rmSync(out, { recursive: true, force: true });
  const cpu = spent() - before;
  const at = (share: number): number => Math.round(samples[Math.floor((samples.length - 1) * share)] ?? 0);
  return {
    threads: count,
    s: Math.round(seconds * 10) / 10,
    's to say': Math.round(said) / 1000,
    's to first': Math.round(first) / 1000,
    'people/s': Math.round((people / seconds) * 10) / 10,
    'CPU ms a person': Math.round((cpu * 1000) / people),
    'MB at 1/4': at(0.25),
    'MB at 1/2': at(0.5),
    'MB at end': at(0.98),
    'MB peak': Math.round(Math.max(...samples)),
  };
}

/** Whether anyone's record stands, in place or where papers wait. */
function reached(out: string): boolean {
  for (const at of [join(out, '.not-checked-yet'), out]) {
    try {
      const names = readdirSync(at).filter((name) => name.startsWith('P-'));
      if (names.some((name) => existsSync(join(at, name, 'record.json')))) return true;
    } catch {
      // Not there yet.
    }
  }
  return false;
}

/** CPU seconds of children that have ended, from the kernel: Node tells only its own. */
function spent(): number {
  const fields = readFileSync('/proc/self/stat', 'utf8').split(') ')[1]!.split(' ');
  // utime, stime, cutime, cstime in hundredths of a second (proc(5)).
  return fields.slice(11, 15).reduce((sum, field) => sum + Number(field), 0) / 100;
}

const rows = [];
for (const count of threads.length > 0 ? threads : [1, 2]) rows.push(await run(count));
console.log(`${people} people, ${days} days, every ${step} min`);
console.table(rows);
