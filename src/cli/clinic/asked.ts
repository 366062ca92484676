import { join, relative, resolve } from 'node:path';
import { codesIn, leftOver, MANIFEST } from '../../clinic/listing.ts';
import { readManifest } from '../../clinic/manifest.ts';
import { findPeople } from '../../clinic/people.ts';
import { inShard, parseShard, type Shard } from '../../clinic/shards.ts';
import { USUAL, withUsual } from '../../clinic/thresholds.ts';
import type { Place } from '../../language/index.ts';
import type { Person } from '../../model/clinic.ts';
import { SETTINGS } from '../../papers/inputNames.ts';
import type { FolderSettings } from '../../schemas/settings.ts';
import type { Thresholds } from '../../schemas/thresholds.ts';
import { type Door, refuseSettings } from '../door.ts';
import { opened, WrongUse } from '../exits.ts';
import { jsonOf } from '../json.ts';
import { readPlainFile, readText, standsAt } from '../plainFile.ts';
import { folderSettings, settle, wholePaths } from '../settings.ts';
import { walk } from './walk.ts';

export interface ClinicOptions extends FolderSettings {
  out: string;
  further?: boolean;
  html?: boolean;
  numbers?: boolean;
  attach?: boolean;
  fhir?: boolean;
  fhirReadings?: boolean;
  dryRun?: boolean;
  writeManifest?: boolean;
  threads?: number;
  shard?: string;
  thresholds?: string;
  /** Orders the worklist by the time of the visit. */
  byVisit?: boolean;
  since?: string;
  /** How many people the day has room for. */
  places?: number;
  timeLimit: number;
  memory: number;
  queue?: string;
}

/** What a clinic run is to do, with everything checked that can be before a file is opened. */
export interface Asked {
  folder: string;
  out: string;
  people: Person[];
  /** How many there are in the whole folder. */
  everyone: number;
  passedOver: string[];
  manifest: boolean;
  thresholds: Thresholds;
  byVisit: boolean;
  places: number | null;
  shard: Shard | undefined;
  /** For everyone. */
  options: FolderSettings;
  /** Results of an earlier run, to compare with. */
  since: string | undefined;
  today: string;
  /** How the worklist is printed: as everyone's papers are. */
  look: { paper: 'a4' | 'letter'; grey: boolean; clinic: string | undefined; place: Place };
}

/** Looks at the folder and the options. Throws WrongUse for what cannot be meant. */
export async function ask(named: string, given: ClinicOptions, door: Door): Promise<Asked> {
  const { out: outNamed, shard: part, thresholds: rules } = given;
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
  const seen = opened(named, () => walk(folder, out));
  const rows = seen.manifest ? manifestRows(folder) : [];
  const people = findPeople({ ...seen, codes: codesIn(seen.settings, (path) => readText(join(folder, path))) }, rows);
  if (people.length === 0) throw new WrongUse('emptyFolder', { path: named });
  const read = new Set(people.flatMap(({ files }) => files));
  const passedOver = leftOver(seen, read);
  const options = { ...(await usual(folder, seen.settings, door)), ...wholePaths(forEveryone(given), '.') };
  const since = given.since === undefined ? undefined : resolve(given.since);
  if (since !== undefined && !isFolder(since)) throw new WrongUse('noSuchFile', { path: given.since! });
  if (since === out) throw new WrongUse('sinceIsOut', { path: outNamed });
  // Wrong options are one mistake, not one a person.
  if (options.acceptLosses !== undefined) throw new WrongUse('lossesForAll', { path: SETTINGS });
  const wanted = await settle(options, undefined, door.today);
  if ('issues' in wanted) return refuseSettings(door, wanted.issues);
  return {
    folder,
    out,
    people: shard ? people.filter(({ code }) => inShard(code, shard)) : people,
    everyone: people.length,
    // What belongs to nobody is told by the first part.
    passedOver: !shard || shard.index === 1 ? passedOver : [],
    manifest: seen.manifest,
    byVisit: given.byVisit ?? false,
    places: given.places ?? null,
    thresholds: rules === undefined ? USUAL : await readThresholds(rules),
    shard,
    options,
    since,
    today: wanted.settings.today,
    look: { paper: wanted.paper, grey: wanted.grey, clinic: options.clinic, place: wanted.place },
  };
}

/** A line a person: a hundred thousand of them. */
const MOST_MANIFEST = 20_000_000;

function manifestRows(folder: string) {
  const path = join(folder, MANIFEST);
  const manifest = readManifest(opened(path, () => readPlainFile(path, MOST_MANIFEST)));
  if (!manifest.ok) throw new WrongUse('wrongManifest', { path: MANIFEST, actual: manifest.actual });
  return manifest.rows;
}

export async function readThresholds(path: string): Promise<Thresholds> {
  const { parseThresholds } = await import('../../schemas/thresholds.ts');
  const checked = parseThresholds(jsonOf(path, 'wrongThresholds'));
  if (!checked.ok) throw new WrongUse('wrongThresholds', { path, problem: checked.problems.join('; ') });
  return withUsual(checked.thresholds);
}

const isFolder = (path: string): boolean => standsAt(path)?.isDirectory() ?? false;

/** The settings at the top of the folder hold for everyone, where the command line does not say otherwise. */
async function usual(folder: string, found: readonly string[], door: Door): Promise<FolderSettings> {
  if (!found.includes(SETTINGS)) return {};
  const read = await folderSettings(join(folder, SETTINGS));
  if (!('issues' in read)) return read;
  return refuseSettings(door, read.issues);
}

/** The options that are about how to read and print, without those of the run. */
function forEveryone(given: ClinicOptions): FolderSettings {
  const {
    out,
    further,
    html,
    numbers,
    attach,
    fhir,
    fhirReadings,
    dryRun,
    writeManifest,
    threads,
    shard,
    thresholds,
    byVisit,
    since,
    places,
    ...more
  } = given;
  const { timeLimit, memory, queue, ...everyone } = more;
  return everyone;
}
