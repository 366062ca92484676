import { utf8 } from '../../bytes/text.ts';
import type { Place } from '../../language/index.ts';
import type { Issue } from '../../model/input.ts';
import type { CompareChoice } from '../../model/settings.ts';
import { agreedFrom } from '../../papers/agreedForm.ts';
import { readPregnancyGoals } from '../../papers/pregnancyGoals.ts';
import type { Teller } from '../../papers/teller.ts';
import { a1cOf, comparedDays, settled, type Wanted, wantedOf } from '../../papers/wanted.ts';
import { parseLayout } from '../../schemas/layout.ts';
import { readVisit } from '../../schemas/readVisit.ts';
import { type FolderSettings, readSettings } from '../../schemas/settings.ts';
import { isLocalDate } from '../../time/calendar.ts';
import { isZone } from '../../time/zone.ts';
import type { LayoutAnswers, Wish } from '../messages.ts';
import { baseOf, besideIn, type Shelf, visitsAt } from './files.ts';

type Settled = { wanted: Wanted; holds: FolderSettings } | { issues: Issue[] };

const wrong = (file: string, name: string, expected: string): Settled => ({
  issues: [{ code: 'settings-wrong-value', level: 'refusal', origin: { file, line: 0 }, actual: name, expected }],
});

/** What is wanted for a person: settings that lie with the files, and over them what was chosen on the page. */
export function settle(shelf: Shelf, wish: Wish, shown: Place, forms: readonly Teller[]): Settled {
  const { person, ofMany, today } = wish;
  const path = person.settings;
  const lying = path === undefined ? undefined : shelf.bytes.get(path);
  const file = path ?? '';
  const read = lying === undefined ? { settings: {} } : readSettings(utf8(lying), baseOf(file));
  if ('issues' in read) return read;
  const chosen = settled(read.settings, wish.asked).asked;
  const asked: FolderSettings = ofMany ? { ...chosen, code: person.code } : chosen;
  const folder = file.slice(0, file.lastIndexOf('/') + 1);
  if (asked.zone !== undefined && !isZone(asked.zone)) return wrong(file, 'zone', 'Europe/Madrid');
  const agreed = agreedIn(shelf, folder, asked.agreed, forms);
  if (agreed === null) return wrong(file, 'agreed', asked.agreed ?? '');
  const compare = comparedWith(shelf, folder, asked);
  if (compare === null) return wrong(file, 'compare', 'previous');
  const a1c = asked.a1c === undefined ? undefined : a1cOf(asked.a1c);
  if (a1c === null) return wrong(file, 'a1c', '7.1 %');
  const pregnancyGoals = asked.pregnancyGoals === undefined ? undefined : readPregnancyGoals(asked.pregnancyGoals);
  if (pregnancyGoals === null) return wrong(file, 'pregnancyGoals', '90/130/115');
  const layout = layoutOf(shelf, folder, asked.layout, wish.layout);
  if (layout === null) return wrong(file, 'layout', '{ }');
  const brought = {
    today,
    ...(compare === undefined ? {} : { compare }),
    ...(a1c === undefined ? {} : { a1c }),
    ...(agreed === undefined ? {} : { agreed }),
    ...(pregnancyGoals === undefined ? {} : { pregnancyGoals }),
    ...(layout === undefined ? {} : { layout }),
  };
  // The papers speak the language of the page: whoever sees them chose it.
  const wanted = wantedOf(asked, shown, brought);
  return { wanted, holds: { ...asked, paper: wanted.paper, targets: wanted.settings.targets } };
}

/** What was agreed, as a file that lies with the others holds it; null for what is none. */
function agreedIn(shelf: Shelf, folder: string, named: string | undefined, forms: readonly Teller[]) {
  if (named === undefined) return undefined;
  const bytes = shelf.bytes.get(folder + named);
  const read = bytes && agreedFrom(utf8(bytes), forms);
  return read?.ok ? read.agreed : null;
}

/** Null for what cannot be read so. */
function comparedWith(shelf: Shelf, folder: string, asked: FolderSettings): CompareChoice | null | undefined {
  const { compare, changed } = asked;
  if (changed !== undefined) {
    const [date = '', ...text] = changed.trim().split(/\s+/);
    return isLocalDate(date) && text.length > 0 ? { with: 'change', date, text: text.join(' ').slice(0, 80) } : null;
  }
  if (compare === undefined) return undefined;
  const named = typeof compare === 'string' ? [compare] : compare;
  const days = named.length === 1 ? comparedDays(named[0]!) : null;
  if (days) return days.with === 'dates' && days.from > days.to ? null : days;
  const visits = [];
  for (const name of named) {
    const inFolder = visitsAt(shelf, besideIn(folder, name));
    const paths = inFolder.length > 0 ? inFolder : visitsAt(shelf, name);
    if (paths.length === 0) return null;
    for (const path of paths) {
      const read = readVisit(utf8(shelf.bytes.get(path)!), baseOf(path));
      if (!('visit' in read)) return null;
      visits.push(read.visit);
    }
  }
  return { with: 'visits', visits };
}

/** The layout that lies with the files, and over it what was answered; null for what is none. */
function layoutOf(shelf: Shelf, folder: string, named: string | undefined, answers?: LayoutAnswers) {
  let content: Record<string, unknown> = {};
  if (named !== undefined) {
    const bytes = shelf.bytes.get(folder + named);
    const text = named.trimStart().startsWith('{') ? named : bytes && utf8(bytes);
    if (text === undefined) return null;
    try {
      content = JSON.parse(text);
    } catch {
      return null;
    }
  }
  if (named === undefined && answers === undefined) return undefined;
  const merged: Record<string, unknown> = { ...content };
  for (const [name, value] of Object.entries(answers ?? {})) {
    const below = merged[name];
    merged[name] = isRecord(value) && isRecord(below) ? { ...below, ...value } : value;
  }
  const checked = parseLayout(merged);
  return checked.ok ? checked.layout : null;
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
