import { join } from 'node:path';
import { askedFor } from '../../clinic/nearest.ts';
import type { Issue } from '../../model/input.ts';
import { folderSettings, settle, type Wanted } from '../settings.ts';
import { visitsIn } from './disk.ts';
import type { Task } from './turn.ts';

/** What is wanted for one person, of all that was asked for in the folder and on the command line. */
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
  const all = askedFor(options, own, person);
  if (since !== undefined && all.compare === undefined && all.changed === undefined) {
    const visits = visitsIn(since, person.stem);
    if (visits.length > 0) all.compare = visits;
  }
  const wanted = await settle(all, undefined, today);
  if ('issues' in wanted) return wanted;
  return { ...wanted, dateGiven: (own.date ?? options.date) !== undefined };
}
