import { join, relative, resolve } from 'node:path';
import { parseShard } from '../../clinic/shards.ts';
import { SETTINGS } from '../../papers/inputNames.ts';
import type { ClinicSettings } from '../../schemas/clinicSettings.ts';
import { type Door, refuseSettings } from '../door.ts';
import { WrongUse } from '../exits.ts';
import { readText, standsAt } from '../plainFile.ts';
import { wholePaths } from '../settings.ts';
import type { ClinicOptions } from './asked.ts';

/** Where the results go when nobody says. */
const OUT = 'reports';

/**
 * The options with what the settings at the top of the folder say of the run, where the command line does not. Without a
 * folder, the one we are in, if its settings say where the results go. Throws WrongUse where nothing says so.
 */
export async function withSettings(
  named: string | undefined,
  given: ClinicOptions,
  door: Door,
): Promise<{ folder: string; given: ClinicOptions }> {
  const folder = named ?? '.';
  const { run } = await settingsAt(resolve(folder), door);
  if (named === undefined && (given.out ?? run.out) === undefined) throw new WrongUse('noFolderNamed');
  const own = { ...run };
  for (const name of ['out', 'since', 'thresholds'] as const)
    if (own[name] !== undefined) own[name] = resolve(folder, own[name]);
  return { folder, given: { ...own, ...given } as ClinicOptions };
}

/** Where a run reads and writes, and which part of it. Throws WrongUse for what cannot be meant. */
export function placesOf(named: string, { out: outNamed = OUT, shard: part }: ClinicOptions) {
  const folder = resolve(named);
  const out = resolve(outNamed);
  const stat = standsAt(folder);
  if (!stat) throw new WrongUse('noSuchFile', { path: named });
  if (!stat.isDirectory()) throw new WrongUse('noFolder', { path: named });
  // Results among the inputs would be read as inputs the next time.
  if (relative(out, folder) === '' || !relative(out, folder).startsWith('..')) {
    throw new WrongUse('outOverFolder', { path: outNamed });
  }
  const shard = part === undefined ? undefined : parseShard(part);
  if (part !== undefined && !shard) throw new WrongUse('wrongShard', { value: part });
  return { folder, out, outNamed, shard };
}

/** The settings at the top of the folder hold for everyone, where the command line does not say otherwise. */
export async function settingsAt(folder: string, door: Door): Promise<ClinicSettings> {
  const path = join(folder, SETTINGS);
  if (!standsAt(path)?.isFile()) return { everyone: {}, run: {} };
  const { readClinicSettings } = await import('../../schemas/clinicSettings.ts');
  const read = readClinicSettings(readText(path), SETTINGS);
  if ('issues' in read) return refuseSettings(door, read.issues);
  return { ...read, everyone: wholePaths(read.everyone, folder) };
}
