import { readdirSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import type { Input } from '../model/input.ts';
import { isExport, isNoExport, MOST_BYTES, SETTINGS } from '../papers/inputNames.ts';
import { opened, WrongUse } from './exits.ts';
import { readPlainFile, standsAt } from './plainFile.ts';

export interface Gathered {
  inputs: Input[];
  /** Full paths of the inputs, in the same order; an output may never land on one. */
  paths: string[];
  /** Full path of the settings file that stands beside the inputs. */
  settingsPath?: string;
  /** Files of a given folder that were not opened, because their ending is not one of an export. */
  passedOver: string[];
}

function filesOf(folder: string): { inputs: string[]; passedOver: string[] } {
  const names = readdirSync(folder, { withFileTypes: true })
    .filter((entry) => !entry.isDirectory() && !entry.name.startsWith('.') && entry.name !== SETTINGS)
    .map((entry) => entry.name)
    .filter((name) => !isNoExport(name))
    .sort();
  // Nobody asked for a pipe or device that lies in a folder, and reading one may never end.
  const opened = (name: string): boolean => isExport(name) && isFile(join(folder, name));
  return { inputs: names.filter(opened), passedOver: names.filter((name) => !opened(name)) };
}

const isFile = (path: string): boolean => standsAt(path)?.isFile() ?? false;

/** Finds and opens what the person named. Throws WrongUse when something is not there or cannot be opened. */
export function gather(named: readonly string[], notInputs: readonly string[] = []): Gathered {
  const paths: string[] = [];
  const folders = new Set<string>();
  const passedOver: string[] = [];
  const leftOut = new Set(notInputs.map((path) => resolve(path)));
  for (const name of named) {
    const path = resolve(name);
    const stat = standsAt(path);
    if (!stat) throw new WrongUse('noSuchFile', { path: name });
    if (stat.isDirectory()) {
      const found = filesOf(path);
      const inputs = found.inputs.map((file) => join(path, file)).filter((file) => !leftOut.has(file));
      if (inputs.length === 0) throw new WrongUse('emptyFolder', { path: name });
      paths.push(...inputs);
      passedOver.push(...found.passedOver);
      folders.add(path);
    } else {
      paths.push(path);
      folders.add(dirname(path));
    }
  }
  const settings = [...folders].map((folder) => join(folder, SETTINGS)).filter(isFile);
  if (settings.length > 1) throw new WrongUse('twoSettings', { first: settings[0]!, second: settings[1]! });
  const once = [...new Set(paths)];
  return {
    inputs: once.map((path) => ({ name: basename(path), bytes: open(path) })),
    paths: once,
    ...(settings[0] === undefined ? {} : { settingsPath: settings[0] }),
    passedOver,
  };
}

function open(path: string): Uint8Array {
  const stat = standsAt(path);
  if (stat && !stat.isFile()) throw new WrongUse('noPlainFile', { path });
  if ((stat?.size ?? 0) > MOST_BYTES) throw new WrongUse('fileTooLarge', { path });
  return opened(path, () => readPlainFile(path, MOST_BYTES));
}
