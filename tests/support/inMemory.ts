import { existsSync, readFileSync, statfsSync } from 'node:fs';
import { freemem, tmpdir } from 'node:os';

const MEMORY = '/dev/shm';
/** Bytes: what the suite writes at most at a time, and what its workers, programs and browsers need beside it. */
const ROOM = { files: 2e9, all: 8e9 };

/**
 * Where tests write their files: in memory where there is room for it, else where the machine wants temporary files. The command forces
 * each file onto the disk, and a disk takes 10 ms for a file that is written anew: half of what some tests took.
 */
export function scratchFolder(): string {
  if (process.env.TMPDIR !== undefined || !existsSync(MEMORY) || freemem() < ROOM.all) return tmpdir();
  const { bavail, bsize } = statfsSync(MEMORY);
  const mount = readFileSync('/proc/mounts', 'utf8')
    .split('\n')
    .map((line) => line.split(' '))
    .findLast(([, at]) => at === MEMORY);
  const options = mount?.[3]?.split(',') ?? [];
  // Programs are installed and started there too.
  const usable = mount?.[2] === 'tmpfs' && options.includes('rw') && !options.includes('noexec');
  return usable && bavail * bsize >= ROOM.files ? MEMORY : tmpdir();
}
