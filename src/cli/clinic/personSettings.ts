import { basename, dirname, join, resolve } from 'node:path';
import type { Issue } from '../../model/input.ts';
import type { FolderSettings } from '../../schemas/settings.ts';
import { readText, settle, type Wanted } from '../settings.ts';
import type { Task } from './turn.ts';

/**
 * What is wanted for one person. The nearer to the person wins: the manifest's row, then the settings in their own
 * folder, then what was asked for everyone. The code is always the one the folder or the manifest gives.
 */
export async function settlePerson({
  person,
  folder,
  options,
  today,
}: Pick<Task, 'person' | 'folder' | 'options' | 'today'>): Promise<
  (Wanted & { dateGiven: boolean }) | { issues: Issue[] }
> {
  let own: FolderSettings = {};
  if (person.settings !== undefined) {
    const path = join(folder, person.settings);
    const { readSettings } = await import('../../schemas/settings.ts');
    const read = readSettings(readText(path), basename(path));
    if ('issues' in read) return read;
    own = { ...read.settings };
    if (own.layout !== undefined) own.layout = resolve(dirname(path), own.layout);
  }
  const { name, targets, unit, zone } = person.row ?? {};
  const row = Object.fromEntries(
    Object.entries({ name, targets, unit, zone }).filter(([, value]) => value !== undefined),
  );
  const layers = [options, own, row].map((layer) => ({ ...layer }) as FolderSettings);
  // Days and dates answer one question: whoever is nearer answers the whole of it.
  if (['days', 'from', 'to'].some((key) => own[key as 'days'] !== undefined)) {
    for (const key of ['days', 'from', 'to'] as const) delete layers[0]![key];
  }
  const wanted = await settle({ ...Object.assign({}, ...layers), code: person.code }, undefined, today);
  if ('issues' in wanted) return wanted;
  return { ...wanted, dateGiven: (own.date ?? options.date) !== undefined };
}
