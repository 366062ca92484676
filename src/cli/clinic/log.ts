import { closeSync, constants, openSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { RUN_LOG } from '../../clinic/listing.ts';
import type { Turn } from './turn.ts';

/** Facts of a run without a word of a person: counts, hashes, versions, times. Only these names are ever written. */
export interface LogEntry {
  event: 'start' | 'person' | 'end';
  run?: string;
  version?: string;
  node?: string;
  people?: number;
  threads?: number;
  shard?: string;
  /** Short hash of the code: the same in every run, and no code. */
  person?: string;
  how?: Turn['how'] | 'stopped';
  read?: boolean;
  /** The words key of why not. */
  why?: string;
  key?: string;
  inputs?: string[];
  outputs?: string[];
  rows?: number;
  readings?: number;
  ms?: number;
  counts?: Record<string, number>;
  exit?: number;
}

const { O_APPEND, O_CREAT, O_WRONLY, O_NOFOLLOW } = constants;
/** Where a system has no such flag (Windows), making a link asks for rights that others do not have. */
const AT_ITS_END = O_APPEND | O_CREAT | O_WRONLY | (O_NOFOLLOW ?? 0);

export type Log = (entry: LogEntry) => void;

/** A log in JSON Lines (one object a line); each line is one write, so that runs side by side do not mix within one. */
export function openLog(out: string, clock: () => string): Log {
  const path = join(out, RUN_LOG);
  return (entry) => {
    try {
      const file = openSync(path, AT_ITS_END);
      try {
        writeSync(file, `${JSON.stringify({ at: clock(), ...entry })}\n`);
      } finally {
        closeSync(file);
      }
    } catch {
      // A full disk is told where the papers are saved; the log must not be what ends a run. Nor a link, which is not followed.
    }
  };
}
