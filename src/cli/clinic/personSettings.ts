import { join } from 'node:path';
import type { Issue } from '../../model/input.ts';
import type { FolderSettings } from '../../schemas/settings.ts';
import { folderSettings, settle, type Wanted } from '../settings.ts';
import { visitsIn } from './disk.ts';
import type { Task } from './turn.ts';

/**
 * What is wanted for one person. The nearer to the person wins: the manifest's row, then the settings in their own
 * folder, then what was asked for everyone. The code is always the one the folder or the manifest gives.
 */
export async function settlePerson({
  person,
  folder,
  options,
  since,
  today,
}: Pick<Task, 'person' | 'folder' | 'options' | 'since' | 'today'>): Promise<
  (Wanted & { dateGiven: boolean }) | { issues: Issue[] }
> {
  const own = person.settings === undefined ? {} : await folderSettings(join(folder, person.settings));
  if ('issues' in own) return own;
  const everyone = { ...options };
  // Some names answer one question: whoever is nearer answers the whole of it.
  for (const question of [
    ['days', 'from', 'to'],
    ['compare', 'changed'],
    ['language', 'region'],
  ] as const) {
    const nearer = { ...own, ...rowSettings(person) };
    if (question.some((name) => nearer[name] !== undefined)) for (const name of question) delete everyone[name];
  }
  const all: FolderSettings = { ...everyone, ...own, ...rowSettings(person), code: person.code };
  if (since !== undefined && all.compare === undefined && all.changed === undefined) {
    const visits = visitsIn(since, person.stem);
    if (visits.length > 0) all.compare = visits;
  }
  const wanted = await settle(all, undefined, today);
  if ('issues' in wanted) return wanted;
  return { ...wanted, dateGiven: (own.date ?? options.date) !== undefined };
}

function rowSettings({ row }: Pick<Task['person'], 'row'>): FolderSettings {
  const { name, targets, unit, zone, language, a1c } = row ?? {};
  const all = { name, targets, unit, zone, language, ...(a1c === undefined ? {} : { a1c: `${a1c} %` }) };
  return Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined));
}
