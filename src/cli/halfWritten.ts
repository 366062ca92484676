import { readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fingerprint } from '../bytes/hash.ts';
import { once } from '../once.ts';

/** Asked when something is saved: the modules would be loaded at every start. */
const thread = once(() => process.getBuiltinModule('node:worker_threads').threadId);
const host = once(() => fingerprint(process.getBuiltinModule('node:os').hostname()).slice(0, 8));

/** A hidden name says who writes there: process, thread and a mark of the machine, as earlier ones did only in part. */
const PART = /^\.(.+)\.(\d+)(?:-(\d+))?(?:-([0-9a-f]{8}))?\.part$/;

/**
 * Milliseconds after which a half-written file is left by someone, wherever they are: writing takes seconds. A day, since the
 * clocks of a share and of a machine may be hours apart.
 */
const LEFT_AFTER = 24 * 3600 * 1000;

/** The hidden path under which a file of a folder is written until it is whole. */
export const partPath = (folder: string, name: string): string =>
  join(folder, `.${name}.${process.pid}-${thread()}-${host()}.part`);

/**
 * Takes away what a run that was killed left half written in a folder: at once where the process was one of this machine and is
 * gone, by its age where that cannot be known. Of files without a machine's mark only those of `names`, where the folder may hold
 * other programs' too. Call it before writing: what this very thread left is of an earlier process of the same number.
 */
export function clearParts(folder: string, names?: readonly string[]): void {
  for (const entry of listed(folder)) {
    const [, name = '', pid, writer, mark] = PART.exec(entry) ?? [];
    if (pid === undefined || (mark === undefined && names && !names.includes(name))) continue;
    const path = join(folder, entry);
    try {
      if (isLeft(Number(pid), writer, mark) || isOld(path)) rmSync(path, { force: true });
    } catch {
      // Another run took it away first, or it is not ours to take: nothing reads it.
    }
  }
}

function isLeft(pid: number, writer: string | undefined, mark: string | undefined): boolean {
  if (mark !== host()) return false;
  return pid === process.pid ? writer === String(thread()) : !isAlive(pid);
}

const isOld = (path: string): boolean => Date.now() - statSync(path).mtimeMs > LEFT_AFTER;

function listed(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

/** Whether a process of this number runs on this machine. */
export function isAlive(pid: number): boolean {
  if (!Number.isInteger(pid) || pid <= 0) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
