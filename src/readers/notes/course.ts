import type { NoteEntry } from '../../model/input.ts';
import { DAY_MS } from '../../time/calendar.ts';
import { tokens } from '../table/vocabulary.ts';

/** Long-acting insulin is injected once or twice a day; more amounts a day than this are a pump's background (ours). */
const INJECTED = 4;
/** Before so many notes nothing is said of how often they come (ours). */
const FEW = 12;

const BACKGROUND = /^(?:basal\w*|bazal\w*|basaal\w*|background|базальн\w*|βασικ\w*)$|基础|基礎|기저/;

const backgrounds = new Map<string, boolean>();
function isBackground(label: string): boolean {
  let known = backgrounds.get(label);
  if (known === undefined) {
    known = tokens(label).some((word) => BACKGROUND.test(word));
    if (backgrounds.size < 2000) backgrounds.set(label, known);
  }
  return known;
}

/**
 * The notes of a file with a pump's background as the course of a rate: small amounts of basal insulin that come many times a
 * day are no doses, and a rate is told where it changes, not each time it is written down again.
 */
export function courseOf(notes: NoteEntry[]): NoteEntry[] {
  const basal = notes.filter(({ kind, label }) => kind === 'insulin' && label !== undefined && isBackground(label));
  const days = new Set(basal.map(({ wall }) => Math.floor(wall / DAY_MS))).size;
  const pumped = new Set(basal.length >= FEW && basal.length > INJECTED * days ? basal : []);
  if (pumped.size === 0 && !notes.some(({ kind }) => kind === 'insulin-rate')) return notes;
  const rates = notes
    .flatMap((note) =>
      note.kind === 'insulin-rate' ? [note] : pumped.has(note) ? [{ ...note, kind: 'insulin-rate' as const }] : [],
    )
    .sort((a, b) => a.wall - b.wall);
  const last = new Map<string, NoteEntry>();
  const changes = rates.filter((note) => {
    const before = last.get(note.label ?? '');
    last.set(note.label ?? '', note);
    // Zeros that fill a column before anything ran are no suspension.
    if (!before) return note.amount !== 0;
    return before.amount !== note.amount || before.unit !== note.unit || before.text !== note.text;
  });
  return [...notes.filter((note) => note.kind !== 'insulin-rate' && !pumped.has(note)), ...changes];
}
