import type { Input } from '../model/input.ts';
import type { Settings } from '../model/settings.ts';
import { safeName } from './safeName.ts';

/** The ending of a file's name with its dot; none where the dot comes first. */
const endingOf = (name: string): string => /(?<=[^/])\.[^./]*$/.exec(name)?.[0] ?? '';

/** Inputs under the names they have in the results, and the way back for whoever sits at the command. */
export interface Named {
  inputs: Input[];
  /** What is called otherwise than it is. */
  aliases: { alias: string; file: string }[];
  /** Puts the files' own names back into a line that is only shown, not kept. */
  own(line: string): string;
  /** Names of files as the results have them. */
  renamed(names: readonly string[]): string[];
}

/**
 * Exports are often called by the name of the person. Where only a code is to identify someone, the files are called
 * by it too, in everything that is written: `P-17-file-1.csv`.
 */
export function namedFor({ code, name }: Settings['person'], inputs: readonly Input[]): Named {
  if (code === undefined || name !== undefined)
    return { inputs: [...inputs], aliases: [], own: (line) => line, renamed: (names) => [...names] };
  const pairs = inputs.map((input, i) => ({ input, alias: `${safeName(code)}-file-${i + 1}${endingOf(input.name)}` }));
  // Of "file-1.csv" and "file-11.csv" neither holds the other: both end in a dot and the ending.
  return {
    aliases: pairs.map(({ input, alias }) => ({ alias, file: input.name })),
    inputs: pairs.map(({ input, alias }) => ({ ...input, name: alias })),
    own: (line) => pairs.reduce((text, { input, alias }) => text.replaceAll(alias, () => input.name), line),
    renamed: (names) => names.map((name) => pairs.find(({ input }) => input.name === name)?.alias ?? name),
  };
}

/** The settings with the files they name called as the results call them. */
export const withNames = ({ acceptLosses, ...settings }: Settings, renamed: Named['renamed']): Settings =>
  acceptLosses === undefined ? settings : { ...settings, acceptLosses: renamed(acceptLosses) };
