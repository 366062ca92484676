import type { Below, Filled } from '../model/words.ts';

/** How the command ends; kept stable, so that scripts can rely on it. */
export const EXIT = {
  /** Everything asked for was made. */
  done: 0,
  /** The input could not be read safely; no report was written. */
  refused: 1,
  /** The report was written, but a part of it could not be worked out, or a file could not be written. */
  partly: 2,
  /** The command was not given what it needs. */
  usage: 64,
} as const;

/** The command line or a settings file asks for something that does not exist. `key` names the words for it. */
export class WrongUse<Key extends Below<'cli.error'> = Below<'cli.error'>> extends Error {
  readonly key: Key;
  readonly details: Readonly<Record<string, string>>;
  constructor(key: Key, ...[details]: Filled<`cli.error.${Key}`, string>) {
    super(key);
    this.key = key;
    this.details = details ?? {};
  }
}

/** What is read from the disk. Throws WrongUse, with the system's word for it, where it cannot be. */
export function opened<T>(path: string, open: () => T): T {
  try {
    return open();
  } catch (error) {
    throw new WrongUse('cannotOpen', { path, reason: reasonOf(error) });
  }
}

/** The system's own short word for what went wrong, e.g. `EACCES`. */
export const reasonOf = (error: unknown): string =>
  error instanceof Error ? ((error as NodeJS.ErrnoException).code ?? error.message) : String(error);
