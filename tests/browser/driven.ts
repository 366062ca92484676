import { existsSync, readdirSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** What tests ask of a browser that is driven from here; one shape, whichever engine it is. */
export interface Driven {
  name: string;
  version: string;
  goto(url: string): Promise<unknown>;
  /** Runs an expression in the page, waits for what it promises, and gives what JSON can carry of it. */
  evaluate(expression: string): Promise<unknown>;
  setFiles(selector: string, paths: string[]): Promise<void>;
  click(selector: string): Promise<void>;
  screenshot(path: string): Promise<void>;
  /** What is open as it is printed, where the engine's driver can. */
  pdf?(): Promise<Buffer>;
  close(): Promise<void>;
}

/** Where a program stands, also Debian's own folder of a library, which holds a folder for each kind of machine. */
export function programOf(names: readonly string[]): string | undefined {
  const libraries = existsSync('/usr/lib') ? readdirSync('/usr/lib').map((folder) => join('/usr/lib', folder)) : [];
  const folders = [...(process.env.PATH ?? '').split(delimiter), ...libraries];
  return names.flatMap((name) => folders.map((folder) => join(folder, name))).find((path) => existsSync(path));
}

/** Where a driver or a page does not answer, no step waits for ever. */
export async function within<T>(ms: number, what: string, step: Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, fail) => {
    timer = setTimeout(() => fail(new Error(`${what} took more than ${ms} ms.`)), ms);
  });
  return Promise.race([step, late]).finally(() => clearTimeout(timer));
}
