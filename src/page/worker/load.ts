/** Megabytes of files, and what reading them takes here. */
export interface Load {
  megabytes: number;
  seconds: number;
  memory: number;
}

/** So much is read while one looks on. */
const LIGHT = 10;
const PACKED = /\.(zip|gz|xlsx|ods)$/i;
/** A packed table opens to some ten times its bytes. A year of readings every minute (14 MB) took 4.6 s and 0.7 GB in the engines tried. */
const [UNPACKED, MB_A_SECOND, MEMORY_TIMES] = [10, 3, 50] as const;

/** What reading files of so many bytes will take; undefined where nothing is worth a word. */
export function heavyOf(files: readonly (readonly [path: string, size: number])[]): Load | undefined {
  const bytes = files.reduce((sum, [path, size]) => sum + size * (PACKED.test(path) ? UNPACKED : 1), 0);
  const megabytes = Math.round(bytes / 1e6);
  if (megabytes < LIGHT) return undefined;
  return { megabytes, seconds: megabytes / MB_A_SECOND, memory: megabytes * MEMORY_TIMES };
}
