import { utf8 } from '../../bytes/text.ts';
import { askedFor, nearer } from '../../clinic/nearest.ts';
import { type Place, placeOf, REGIONS } from '../../language/index.ts';
import type { Issue } from '../../model/input.ts';
import type { CompareChoice, Marked } from '../../model/settings.ts';
import { agreedFrom } from '../../papers/agreedForm.ts';
import { readPregnancyGoals } from '../../papers/pregnancyGoals.ts';
import type { Teller } from '../../papers/teller.ts';
import { a1cOf, comparedDays, markedIn, settled, type Wanted, wantedOf } from '../../papers/wanted.ts';
import { parseLayout } from '../../schemas/layout.ts';
import { readVisit } from '../../schemas/readVisit.ts';
import type { FolderSettings } from '../../schemas/settings.ts';
import { isLocalDate } from '../../time/calendar.ts';
import { isZone } from '../../time/zone.ts';
import type { LayoutAnswers, Wish } from '../messages.ts';
import { bakedSettings } from './clinicOwn.ts';
import { baseOf, isInline, type Shelf, settingsAt, visitsAt } from './files.ts';

type Settled = { wanted: Wanted; holds: FolderSettings } | { issues: Issue[] };

const wrong = (file: string, name: string, expected: string): Settled => ({
  issues: [{ code: 'settings-wrong-value', level: 'refusal', origin: { file, line: 0 }, actual: name, expected }],
});

/**
 * What lies with a person's files: their settings, and in a folder of people what the manifest and the settings of all say too, each in its
 * place; where nobody names a language, that of the page.
 */
function lyingFor(shelf: Shelf, { person, ofMany, since, language, region }: Wish) {
  const own = settingsAt(shelf, person.settings);
  if (!ofMany || !person.person || 'issues' in own) return own;
  const usual = settingsAt(shelf, person.usual, true);
  if ('issues' in usual) return usual;
  const asked = askedFor(nearer({ language, region }, usual.settings), own.settings, person.person);
  const free = asked.compare === undefined && asked.changed === undefined;
  return { settings: since && free && person.earlier.length > 0 ? { ...asked, compare: person.earlier } : asked };
}

/** What is wanted for a person: settings that lie with the files, and over them what was chosen on the page. */
export function settle(shelf: Shelf, wish: Wish, shown: Place, forms: readonly Teller[]): Settled {
  const { person, ofMany, today } = wish;
  const lying = lyingFor(shelf, wish);
  const file = baseOf(person.settings ?? person.usual ?? '');
  if ('issues' in lying) return lying;
  const below = nearer(bakedSettings(), lying.settings);
  for (const name of namesIn(wish.asked)) if (wish.asked[name] === undefined) delete below[name];
  const chosen = settled(below, wish.asked).asked;
  const asked: FolderSettings = ofMany ? { ...chosen, code: person.code } : chosen;
  // One's own papers speak the language of the page: whoever sees them chose it.
  const place = ofMany ? placeOf(asked.language, asked.region) : shown;
  if (place === null) return wrong(file, 'region', REGIONS.join(', '));
  if (asked.zone !== undefined && !isZone(asked.zone)) return wrong(file, 'zone', 'Europe/Madrid');
  const agreed = agreedIn(shelf, asked.agreed, forms);
  if (agreed === null) return wrong(file, 'agreed', asked.agreed ?? '');
  const compare = comparedWith(shelf, asked);
  if (compare === null) return wrong(file, 'compare', 'previous');
  const a1c = asked.a1c === undefined ? undefined : a1cOf(asked.a1c);
  if (a1c === null) return wrong(file, 'a1c', '7.1 %');
  const pregnancyGoals = asked.pregnancyGoals === undefined ? undefined : readPregnancyGoals(asked.pregnancyGoals);
  if (pregnancyGoals === null) return wrong(file, 'pregnancyGoals', '90/130/115');
  const layout = layoutOf(shelf, asked.layout, wish.layout);
  if (layout === null) return wrong(file, 'layout', '{ }');
  const brought = {
    today,
    ...(compare === undefined ? {} : { compare }),
    ...(a1c === undefined ? {} : { a1c }),
    ...(agreed === undefined ? {} : { agreed }),
    ...(pregnancyGoals === undefined ? {} : { pregnancyGoals }),
    ...(layout === undefined ? {} : { layout }),
  };
  const wanted = wantedOf(asked, place, brought);
  return { wanted, holds: { ...asked, paper: wanted.paper, targets: wanted.settings.targets } };
}

const namesIn = (asked: FolderSettings) => Object.keys(asked) as (keyof FolderSettings)[];

/** What was agreed, as a file that lies with the others holds it; null for what is none. */
function agreedIn(shelf: Shelf, named: string | undefined, forms: readonly Teller[]) {
  if (named === undefined) return undefined;
  const bytes = shelf.bytes.get(named);
  const read = bytes && agreedFrom(utf8(bytes), forms);
  return read?.ok ? read.agreed : null;
}

/** Null for what cannot be read so. */
function comparedWith(shelf: Shelf, asked: FolderSettings): CompareChoice | null | undefined {
  const { compare, changed } = asked;
  const marked = changed === undefined ? undefined : markedOn(changed);
  if (marked === null) return null;
  if (compare === undefined) return marked && { with: 'change', ...marked };
  const named = typeof compare === 'string' ? [compare] : compare;
  const days = named.length === 1 ? comparedDays(named[0]!) : null;
  if (days) return marked || (days.with === 'dates' && days.from > days.to) ? null : days;
  const visits = [];
  for (const name of named) {
    const paths = visitsAt(shelf, name);
    if (paths.length === 0) return null;
    for (const path of paths) {
      const read = readVisit(utf8(shelf.bytes.get(path)!), baseOf(path));
      if (!('visit' in read)) return null;
      visits.push(read.visit);
    }
  }
  return { with: 'visits', visits, ...(marked === undefined ? {} : { changed: marked }) };
}

function markedOn(value: string): Marked | null {
  const { date, text } = markedIn(value);
  return isLocalDate(date) && text !== '' ? { date, text } : null;
}

/** The layout that lies with the files, and over it what was answered; null for what is none. */
function layoutOf(shelf: Shelf, named: string | undefined, answers?: LayoutAnswers) {
  let content: Record<string, unknown> = {};
  if (named !== undefined) {
    const bytes = shelf.bytes.get(named);
    const text = isInline(named) ? named : bytes && utf8(bytes);
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

export const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
