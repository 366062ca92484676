/** For a name inside: what it is called outside, what the names under it are called, or both. Lists are passed through. */
export interface Renames {
  readonly [name: string]: string | Renames | readonly [string, Renames];
}

/** Keeps the names as types. */
export const renames = <const N extends Renames>(names: N): N => names;

type Called<N, Name> = N extends string ? N : N extends readonly [infer To extends string, unknown] ? To : Name;
type Under<N> = N extends string ? null : N extends readonly [string, infer Inner] ? Inner : N;

/** A value under its names outside. */
export type Renamed<T, N> = N extends null
  ? T
  : T extends readonly (infer Each)[]
    ? Renamed<Each, N>[]
    : T extends object
      ? {
          [K in keyof T as K extends keyof N ? Called<N[K], K> : K]: K extends keyof N
            ? Renamed<T[K], Under<N[K]>>
            : T[K];
        }
      : T;

/** Names of a value as they are outside, in the same order; what has no names of its own in `names` is handed on as it is. */
export function renamed<T, const N extends Renames>(value: T, names: N): Renamed<T, N>;
export function renamed(value: unknown, names: Renames): unknown {
  if (Array.isArray(value)) return value.map((each) => renamed(each, names));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, inner]) => {
      const to = Object.hasOwn(names, name) ? names[name]! : name;
      if (typeof to === 'string') return [to, inner];
      // A list is not a table of names.
      const both = isBoth(to);
      return [both ? to[0] : name, renamed(inner, both ? to[1] : to)];
    }),
  );
}

const isBoth = (to: Renames | readonly [string, Renames]): to is readonly [string, Renames] => Array.isArray(to);
