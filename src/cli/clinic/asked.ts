import { join, resolve } from 'node:path';
import { codesIn, leftOver, MANIFEST } from '../../clinic/listing.ts';
import { readManifest } from '../../clinic/manifest.ts';
import { findPeople } from '../../clinic/people.ts';
import { inShard, type Shard } from '../../clinic/shards.ts';
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
import { settle, wholePaths } from '../settings.ts';
import { placesOf, settingsAt } from './runSettings.ts';
import { walk } from './walk.ts';

export interface ClinicOptions extends FolderSettings {
  out?: string;
  further?: boolean;
  html?: boolean;
  numbers?: boolean;
  attach?: boolean;
  fhir?: boolean;
  fhirReadings?: boolean;
  dryRun?: boolean;
  writeManifest?: boolean;
  /** Goes on, and makes papers as files arrive; seconds for which a file must not have changed. */
  keepReady?: boolean;
  settle?: number;
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
  /** Seconds for which the queue's server may be away. */
  queueWait: number;
}

/** What a clinic run is to do, with everything checked that can be before a file is opened. */
export interface Asked {
  folder: string;
  out: string;
  people: Person[];
  /** Those whose files still change: they keep what they have. */
  arriving?: ReadonlySet<Person>;
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
  /** HH:MM on the wall clock; undefined where a date was given, so that the same input gives the same bytes. */
  time: string | undefined;
  /** How the worklist is printed: as everyone's papers are. */
  look: { paper: 'a4' | 'letter'; grey: boolean; clinic: string | undefined; place: Place };
}

/** Looks at the folder and the options. Throws WrongUse for what cannot be meant. */
export async function ask(named: string, given: ClinicOptions, door: Door): Promise<Asked> {
  const { thresholds: rules } = given;
  const { folder, out, outNamed, shard } = placesOf(named, given);
  const seen = opened(named, () => walk(folder, out));
  const rows = seen.manifest ? manifestRows(folder) : [];
  const people = findPeople({ ...seen, codes: codesIn(seen.settings, (path) => readText(join(folder, path))) }, rows);
  if (people.length === 0) throw new WrongUse('emptyFolder', { path: named });
  const read = new Set(people.flatMap(({ files }) => files));
  const passedOver = leftOver(seen, read);
  const options = { ...(await settingsAt(folder, door)).everyone, ...wholePaths(forEveryone(given), '.') };
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
    time: options.date === undefined ? door.time() : undefined,
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
    keepReady,
    settle: _,
    threads,
    shard,
    thresholds,
    byVisit,
    since,
    places,
    ...more
  } = given;
  const { timeLimit, memory, queue, queueWait, ...everyone } = more;
  return everyone;
}
