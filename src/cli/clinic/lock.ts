import { closeSync, mkdirSync, openSync, renameSync, rmSync, statSync, utimesSync, writeSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import type { Shard } from '../../clinic/shards.ts';
import { reasonOf, WrongUse } from '../exits.ts';
import { isAlive, partPath } from '../halfWritten.ts';
import { readPlainFile } from '../plainFile.ts';

/** A holder shows that it is there this often; one not heard of for so long is gone. Milliseconds. */
const BEAT = 5_000;
const SILENCE = 60_000;

export interface Lock {
  /** Whether it is still ours: after a machine has slept another run may have taken the folder over. */
  holds(): boolean;
  release(): void;
}

/**
 * Keeps a results folder to one run, or to one run for each part of a divided folder. Parts hold different people, so
 * they never meet. Throws WrongUse when another run is at work there, or when the folder cannot be written. Gives
 * what releases it.
 */
export function lock(out: string, shard: Shard | undefined): Lock {
  const name = shard ? `.run-${shard.index}-of-${shard.of}.lock` : '.run.lock';
  const path = join(out, name);
  try {
    mkdirSync(out, { recursive: true });
    if (!take(path)) {
      const holder = holderOf(path);
      if (holder.working) throw new WrongUse('atWork', { path: out, holder: holder.name, lock: path });
      // Moved away first: of two who find it abandoned, one moves it, and the other then meets a new one.
      const old = partPath(out, name);
      renameSync(path, old);
      rmSync(old, { force: true });
      if (!take(path)) throw new WrongUse('atWork', { path: out, holder: holderOf(path).name, lock: path });
    }
  } catch (error) {
    if (error instanceof WrongUse) throw error;
    throw new WrongUse('cannotWriteFolder', { path: out, reason: reasonOf(error) });
  }
  const beat = setInterval(() => {
    const now = new Date();
    try {
      utimesSync(path, now, now);
    } catch {
      // Taken away by hand: nothing to keep up.
    }
  }, BEAT).unref();
  const holds = (): boolean => holderOf(path).name === self();
  return {
    holds,
    release() {
      clearInterval(beat);
      if (holds()) rmSync(path, { force: true });
    },
  };
}

const self = (): string => `${process.pid} ${hostname()}`;

function take(path: string): boolean {
  try {
    const file = openSync(path, 'wx');
    try {
      writeSync(file, self());
    } finally {
      closeSync(file);
    }
    return true;
  } catch (error) {
    if (reasonOf(error) === 'EEXIST') return false;
    throw error;
  }
}

function holderOf(path: string): { working: boolean; name: string } {
  try {
    const name = readPlainFile(path, 1000).toString('utf8');
    const [pid, host] = name.split(' ');
    const silent = Date.now() - statSync(path).mtimeMs > SILENCE;
    const gone = host === hostname() && !isAlive(Number(pid));
    return { working: !silent && !gone, name };
  } catch {
    return { working: false, name: '' };
  }
}
