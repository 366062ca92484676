import { basename, dirname, resolve } from 'node:path';
import { type Place, placeOf, REGIONS } from '../language/index.ts';
import type { Issue } from '../model/input.ts';
import { settled, type Wanted as Wishes, wantedOf } from '../papers/wanted.ts';
import type { FolderSettings } from '../schemas/settings.ts';
import { isZone } from '../time/zone.ts';
import { agreedIn } from './agreed.ts';
import { a1cOf, compareWith } from './compareWith.ts';
import { WrongUse } from './exits.ts';
import { jsonOf } from './json.ts';
import { logWords } from './logWords.ts';
import { medicines } from './medicines.ts';
import { readText } from './plainFile.ts';
import { pregnancyGoalsOf } from './pregnancyGoals.ts';
import { topicOrder } from './topicOrder.ts';

/** What the person asked for, from all places, and where it was said. */
export interface Wanted extends Wishes {
  /** Names taken from the settings file, and those of them that the command line overruled. */
  fromFile: string[];
  overruled: string[];
}

/** Options win over the settings file, that over the usual. Throws WrongUse, or hands back what is wrong in the file. */
export async function settle(
  options: FolderSettings,
  settingsPath: string | undefined,
  today: string,
): Promise<Wanted | { issues: Issue[] }> {
  let file: FolderSettings = {};
  if (settingsPath !== undefined) {
    const read = await folderSettings(settingsPath);
    if ('issues' in read) return read;
    file = read;
  }
  const { asked: wanted, fromFile, overruled } = settled(file, options);
  if (wanted.zone !== undefined && !isZone(wanted.zone)) {
    throw new WrongUse('wrongZone', { option: '--zone', value: wanted.zone });
  }
  const place = placeIn(wanted);
  checkPeriod(wanted);
  const order = topicOrder();
  const compare = await compareWith(wanted.compare, wanted.changed);
  const brought = {
    today,
    logWords: logWords(),
    medicines: medicines(),
    ...(order === undefined ? {} : { topicOrder: order }),
    ...(compare === undefined ? {} : { compare }),
    ...(wanted.a1c === undefined ? {} : { a1c: a1cOf(wanted.a1c) }),
    ...(wanted.agreed === undefined ? {} : { agreed: await agreedIn(wanted.agreed) }),
    ...(wanted.pregnancyGoals === undefined ? {} : { pregnancyGoals: pregnancyGoalsOf(wanted.pregnancyGoals) }),
    ...(wanted.layout === undefined ? {} : { layout: await readLayout(wanted.layout) }),
  };
  return { ...wantedOf(wanted, place, brought), fromFile, overruled };
}

/** The settings file at `path`, paths in it made whole. */
export async function folderSettings(path: string): Promise<FolderSettings | { issues: Issue[] }> {
  const { readSettings } = await import('../schemas/settings.ts');
  const read = readSettings(readText(path), basename(path));
  if ('issues' in read) return read;
  return wholePaths(read.settings, dirname(path));
}

/** Wherever the work is done, a path means the same file. */
export function wholePaths(settings: FolderSettings, from: string): FolderSettings {
  const whole = { ...settings };
  if (whole.layout !== undefined && !isInline(whole.layout)) whole.layout = resolve(from, whole.layout);
  if (whole.compare !== undefined)
    whole.compare = [whole.compare].flat().map((one) => (isPath(one) ? resolve(from, one) : one));
  if (whole.agreed !== undefined) whole.agreed = resolve(from, whole.agreed);
  return whole;
}

function placeIn({ language, region }: FolderSettings): Place {
  const place = placeOf(language, region);
  if (place) return place;
  const expected = REGIONS.filter((one) => one.startsWith(language ?? '')).join(', ');
  throw new WrongUse('wrongRegion', { value: region ?? '', language: language ?? 'none', expected });
}

function checkPeriod({ days, from, to }: FolderSettings): void {
  if (days !== undefined && (from ?? to) !== undefined) throw new WrongUse('daysAndDates');
  if (from !== undefined && to !== undefined && from > to) throw new WrongUse('datesReversed', { from, to });
}

/** `previous` and two dates are none. */
const isPath = (compare: string): boolean => compare !== 'previous' && !/^[\d-]{10}\.\.[\d-]{10}$/.test(compare);

/** A short layout may be given as it is, `{"unit":"mmol/L"}`, in place of a file: so the program's questions name it. */
const isInline = (layout: string): boolean => layout.trimStart().startsWith('{');

function inlineJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new WrongUse('wrongLayout', { path: '--layout', problem: (error as Error).message });
  }
}

async function readLayout(path: string): Promise<unknown> {
  const { parseLayout } = await import('../schemas/layout.ts');
  const checked = parseLayout(isInline(path) ? inlineJson(path) : jsonOf(path, 'wrongLayout'));
  if (!checked.ok) throw new WrongUse('wrongLayout', { path, problem: checked.problems.join('; ') });
  return checked.layout;
}
