import type { Person } from '../model/clinic.ts';
import type { FolderSettings } from '../schemas/settings.ts';

/** Some names answer one question: whoever is nearer answers the whole of it. */
const QUESTIONS = [
  ['days', 'from', 'to'],
  ['compare', 'changed'],
  ['language', 'region'],
] as const;

/** What was asked for in two places, of which one is nearer to the person. */
export function nearer(far: FolderSettings, near: FolderSettings): FolderSettings {
  const rest = { ...far };
  for (const question of QUESTIONS) {
    if (question.some((name) => near[name] !== undefined)) for (const name of question) delete rest[name];
  }
  return { ...rest, ...near };
}

/**
 * What is asked for one person. The nearer to the person wins: the manifest's row, then the settings in their own folder,
 * then what was asked for everyone. The code is the person's own: from the manifest, their settings or the folder.
 */
export const askedFor = (everyone: FolderSettings, own: FolderSettings, person: Person): FolderSettings => ({
  ...nearer(everyone, { ...own, ...rowSettings(person) }),
  code: person.code,
});

function rowSettings({ row }: Pick<Person, 'row'>): FolderSettings {
  const { name, targets, unit, zone, language, a1c } = row ?? {};
  const all = { name, targets, unit, zone, language, ...(a1c === undefined ? {} : { a1c: `${a1c} %` }) };
  return Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined));
}
