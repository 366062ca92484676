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

/** One whose keys and pointers are moved as a person's are. */
export interface Handled extends Driven {
  /** Presses and lets go of keys, one after the other, as key events name them, or of the letters of a text. */
  press(...keys: Key[]): Promise<void>;
  type(text: string): Promise<void>;
  /** Moves a mouse over places of the window, in its pixels; or lays a finger on the first and moves it to the others. */
  point(kind: 'mouse' | 'touch', ...places: [x: number, y: number][]): Promise<void>;
  /** Presses a mouse at a place of the window, in its pixels. */
  clickAt(x: number, y: number): Promise<void>;
}

/** Names of keys in actions (W3C WebDriver, 17.4.2). */
const KEYS = {
  ...{ Tab: '\uE004', Enter: '\uE007', Escape: '\uE00C', Space: ' ', End: '\uE010', Home: '\uE011' },
  ...{ ArrowLeft: '\uE012', ArrowUp: '\uE013', ArrowRight: '\uE014', ArrowDown: '\uE015' },
};
export type Key = keyof typeof KEYS;

// Actions of both protocols have one shape (W3C WebDriver, 17; WebDriver BiDi, input.performActions).

export const keyActions = (keys: readonly Key[]): object[] => typeActions(keys.map((key) => KEYS[key]));

export const typeActions = (letters: readonly string[]): object[] => [
  {
    ...{ type: 'key', id: 'keys' },
    actions: letters.flatMap((value) => ['keyDown', 'keyUp'].map((type) => ({ type, value }))),
  },
];

export function pointerActions(kind: 'mouse' | 'touch', places: readonly [x: number, y: number][], press: boolean) {
  const moves = places.map(([x, y]) => ({
    ...{ type: 'pointerMove', x: Math.round(x), y: Math.round(y) },
    duration: 0,
  }));
  const [first, ...others] = moves;
  const down = { type: 'pointerDown', button: 0 };
  const up = { type: 'pointerUp', button: 0 };
  const actions = press ? [first, down, ...others, up] : moves;
  return [{ type: 'pointer', id: kind, parameters: { pointerType: kind }, actions }];
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
