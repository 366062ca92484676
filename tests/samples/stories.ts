import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Analysis, analyse, type Refusal } from '../../src/analyse.ts';
import type { Input } from '../../src/model/input.ts';
import type { Settings } from '../../src/model/settings.ts';
import { type FolderSettings, readSettings } from '../../src/schemas/settings.ts';

export const sampleData = fileURLToPath(new URL('../../sample-data/', import.meta.url));
/** Folders of the invented stories, each with its settings. */
export const storyNames = readdirSync(sampleData)
  .filter((name) => existsSync(join(sampleData, name, 'settings.json')))
  .sort();
export const excerpt = fileURLToPath(new URL('../data/t1d_uom/', import.meta.url));

/** Input files of a folder in the order of their names. */
export function inputsIn(folder: string, wanted: RegExp): Input[] {
  return readdirSync(folder)
    .filter((name) => wanted.test(name))
    .sort()
    .map((name) => ({ name, bytes: readFileSync(join(folder, name)) }));
}

function settingsOf(story: string): FolderSettings {
  const read = readSettings(readFileSync(join(sampleData, story, 'settings.json'), 'utf8'), 'settings.json');
  if ('issues' in read) throw new Error(`${story}: ${JSON.stringify(read.issues)}`);
  return read.settings;
}

const known = new Map<string, Analysis | Refusal>();

/** What the program makes of a story with the settings in its folder, or with others instead: made once of the same. */
export function analyseStory(story: string, other: Partial<Settings> = {}): Analysis | Refusal {
  const key = JSON.stringify([story, other]);
  const analysis = known.get(key) ?? analysedStory(story, other);
  known.set(key, analysis);
  return analysis;
}

function analysedStory(story: string, other: Partial<Settings>): Analysis | Refusal {
  const { targets, zone, unit, date, days } = settingsOf(story);
  const settings: Settings = {
    targets: targets!,
    today: date!,
    period: { days: days! },
    person: {},
    ...(zone === undefined ? {} : { zone }),
    ...(unit === undefined ? {} : { unit }),
    ...other,
  };
  return analyse(inputsIn(join(sampleData, story), /\.(csv|tsv)$/), settings, 'test');
}

/** The analysis, or a failure that shows why there is none. */
export function held(result: Analysis | Refusal): Analysis {
  if (result.ok) return result;
  throw new Error(JSON.stringify(result.issues.filter((issue) => issue.level === 'refusal')));
}

/** Every row has one fate. */
export function rowsAddUp({ rows, used, duplicate, setAside, notes, ignored }: Analysis['ledger']): boolean {
  return rows === used + duplicate + setAside + notes + ignored;
}

/** Share in percent, rounded to one decimal. */
export const percent = (share: number): number => Math.round(share * 1000) / 10;
