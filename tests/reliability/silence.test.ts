import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect } from 'vitest';
import { filesIn } from '../cli/clinicRun.ts';
import { command, home, scratch } from '../cli/run.ts';
import { writePeople } from '../support/people.ts';
import { needs } from '../support/tools.ts';

const story = join(home, 'sample-data/steady-fortnight');

/** Everything that opens a way out or changes a file, as Linux calls it. */
const CALLS =
  'network,open,openat,openat2,creat,unlink,unlinkat,rename,renameat,renameat2,mkdir,mkdirat,rmdir,link,linkat,symlink,symlinkat,truncate,chmod,fchmodat,chown,fchownat,utimensat,mknod,mknodat,execve';

interface Traced {
  exit: number | null;
  /** Calls that reach a network, or ask for an address. */
  network: string[];
  /** Paths that were written to, made or taken away, from the top of the disk. */
  touched: string[];
  /** Programs that were started. */
  started: string[];
  said: string;
}

function traced(folder: string, args: string[]): Traced {
  const log = join(folder, 'trace.txt');
  const ran = spawnSync(
    'strace',
    ['-f', '-qq', '-s', '4096', '-e', `trace=${CALLS}`, '-o', log, process.execPath, command, ...args],
    { cwd: folder, encoding: 'utf8', env: { ...process.env, TZ: 'UTC' }, timeout: 120_000 },
  );
  const calls = readFileSync(log, 'utf8')
    .split('\n')
    .map((line) => line.replace(/^\d+\s+/, ''));
  const touched = calls.flatMap((call) => {
    const reads = /^open/.test(call) && !/O_(WRONLY|RDWR|CREAT|TRUNC|APPEND)/.test(call);
    const writes =
      /^(open|creat|unlink|rename|mkdir|rmdir|link|symlink|truncate|chmod|fchmodat|chown|fchownat|utimensat|mknod)/;
    if (reads || !writes.test(call)) return [];
    return [...call.matchAll(/"((?:[^"\\]|\\.)*)"/g)].map((match) => resolve(folder, match[1]!));
  });
  return {
    exit: ran.status,
    // Threads of the engine talk through pipes and socket pairs without a name: neither leaves the process.
    network: calls.filter((call) => /^(socket|connect|bind|listen|accept4?|sendto|sendmsg|recvfrom)\(/.test(call)),
    touched: [...new Set(touched)].sort(),
    started: calls.filter((call) => call.startsWith('execve(')).slice(1),
    said: ran.stdout + ran.stderr,
  };
}

/** Written to, and no file: what is written there is gone, or is the terminal. */
const DEVICES = ['/dev/null', '/dev/tty', '/dev/pts/ptmx'];

function expectSilent({ exit, network, touched, started, said }: Traced, out: string, exits = 0): void {
  expect(exit, said).toBe(exits);
  expect(network).toEqual([]);
  expect(started).toEqual([]);
  const outside = touched.filter(
    (path) => path !== out && !path.startsWith(`${out}/`) && !DEVICES.includes(path) && !path.startsWith('/proc/self/'),
  );
  expect(outside).toEqual([]);
}

describe('no way out is opened, no program started, and nothing outside --out is changed', () => {
  const traces = needs('strace');

  traces('by a report with every output', () => {
    const folder = scratch();
    cpSync(story, join(folder, 'story'), { recursive: true });
    const before = filesIn(join(folder, 'story'));
    const all = ['--html', '--attach', '--snapshot', '--more-indices', '--compare', 'previous', '--a1c', '7.1'];
    expectSilent(traced(folder, ['report', 'story', '--out', 'papers', ...all]), join(folder, 'papers'));
    expect(filesIn(join(folder, 'story'))).toEqual(before);
  });

  traces('by reading, which writes nothing at all', () => {
    const folder = scratch();
    const ran = traced(folder, ['read', story]);
    expectSilent(ran, join(folder, 'nothing'));
    expect(ran.touched.filter((path) => !path.startsWith('/dev/'))).toEqual([]);
  });

  traces('by a refusal', () => {
    const folder = scratch({ 'a.csv': 'Dear doctor,\nthere is nothing here\n' });
    const ran = traced(folder, ['report', 'a.csv', '--out', 'papers']);
    expectSilent(ran, join(folder, 'papers'), 1);
    expect(ran.touched.filter((path) => !path.startsWith('/dev/'))).toEqual([]);
  });

  traces('by a clinic run in threads, with a person who cannot be read, addresses in notes', () => {
    const folder = scratch();
    mkdirSync(join(folder, 'people'));
    writePeople(join(folder, 'people'), 5, { days: 3, step: 15 });
    mkdirSync(join(folder, 'people/P-9999'));
    writeFileSync(join(folder, 'people/P-9999/a.csv'), '<!DOCTYPE x SYSTEM "http://example.org/x.dtd"><x/>');
    writeFileSync(
      join(folder, 'people/P-0001/more.csv'),
      'Time,Note\n2026-02-02 08:00,see http://example.org/a.png\n2026-02-02 09:00,\\\\server\\share\n',
    );
    const ran = traced(folder, ['clinic', 'people', '--out', 'papers', '--fhir', '--threads', '2']);
    expectSilent(ran, join(folder, 'papers'), 2);
    expect(ran.touched.some((path) => path.endsWith('worklist.pdf'))).toBe(true);
  });
});
