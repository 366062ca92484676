import type { GlucoseUnit } from '../../model/glucose.ts';
import type { PersonMark } from '../../model/input.ts';
import { glucoseUnit } from '../glucose/unit.ts';
import { cellText, fieldCount, type Records } from '../table/records.ts';
import { conceptsOf, plain, tokens } from '../table/vocabulary.ts';
import { type MarkKind, markKindOf, markOf } from './persons.ts';
import { offsetNamed } from './zoneWords.ts';

/** What the lines above and below a table say about all of its rows. */
export interface Above {
  /** Glucose units named there, each with the line that named it first. Limits of a target name none. */
  units: { unit: GlucoseUnit; line: number }[];
  marks: PersonMark[];
  zones: { zone: string; line: number }[];
  /** Minutes from world time that a line gives for all times. */
  offset?: { minutes: number; line: number; text: string };
}

export const NOTHING_ABOVE: Above = { units: [], marks: [], zones: [] };

const MOST_LINES = 50;
const MOST_CELLS = 12;

/** An IANA zone named in a line above the table. */
const ZONE_NAME =
  /(?:^|[\s(:])((?:Africa|America|Antarctica|Asia|Atlantic|Australia|Europe|Indian|Pacific)\/[A-Za-z_]{2,30}(?:\/[A-Za-z_]{2,30})?)(?=$|[\s),;.])/;
const UNIT_IN = /(mg\s?\/\s?(?:100\s?)?(?:dl|ml)|mg\s?%|mmol\s?\/\s?l(?:it(?:re|er))?)/giu;
/** Lines about these name limits or other things in the same unit, not what the column is in. */
const NOT_THE_UNIT = /target|goal|range|limit|threshold|ziel|objetivo|cible|grenz|rango|alarm|alert/;
const ABOUT_TIME = /time|zeit|hora|heure|\bora\b|tijd|\btid\b|aika|czas|clock|uhr|zone|huso|fuseau|utc|gmt/;

/** What may be a unit in a line: Latin ones wherever they stand, those of other scripts as words of their own. */
const unitWords = (text: string): string[] => [
  ...(text.match(UNIT_IN) ?? []),
  ...text.split(/[\s:：;,()[\]]+/).filter((word) => /[^\0-\x7f]/.test(word)),
];

/** Reads the rows from `first` to `last` (half open) that are no part of a table. */
export function readAbove(records: Records, first: number, last: number): Above {
  const above: Above = { units: [], marks: [], zones: [] };
  const known = new Set<string>();
  let headers: string[] = [];
  let bare: string | undefined;
  for (let r = first; r < Math.min(last, first + MOST_LINES); r++) {
    const cells = cellsOf(records, r);
    const line = records.line[r]!;
    const whole = plain(cells.join(' '));
    if (!NOT_THE_UNIT.test(whole)) {
      for (const found of unitWords(cells.join(' '))) {
        const unit = glucoseUnit(found);
        if (unit && !above.units.some((one) => one.unit === unit)) above.units.push({ unit, line });
      }
    }
    for (const cell of cells) {
      const zone = ZONE_NAME.exec(cell)?.[1];
      if (zone && !above.zones.some((one) => one.zone === zone)) above.zones.push({ zone, line });
    }
    // A line that holds a date tells when the file was made, and by which clock that was.
    if (!above.offset && ABOUT_TIME.test(whole) && !/\d{4}-\d|\d[/.]\d{1,2}[/.]\d/.test(whole)) {
      const minutes = offsetNamed(cells.join(' '));
      if (minutes !== undefined) above.offset = { minutes, line, text: cells.join(' ').slice(0, 60) };
    }
    const marks = marksOf(cells, headers);
    for (const mark of marks) {
      const key = `${mark.kind} ${mark.text}`;
      if (!known.has(key)) above.marks.push(mark);
      known.add(key);
    }
    headers = marks.length > 0 ? [] : cells;
    bare ??= bareId(cells);
  }
  // Beside somebody who is named it may be anything's.
  if (above.marks.length === 0 && bare) above.marks.push({ kind: 'code', text: bare });
  return above;
}

/** `ID: 12`, alone on its line: what a study or a clinic calls somebody by. Long codes are those of files and devices (ours). */
const BARE_ID = /^[#*"\s]*id(?:\s*(?:no|nr|num|number)\.?)?\s*[:=：#]?\s*(\p{L}{0,4}[-_ ]?\d{1,6}\p{L}?)$/iu;

function bareId(cells: string[]): string | undefined {
  return BARE_ID.exec(cells.filter((cell) => cell !== '').join(' '))?.[1];
}

function cellsOf(records: Records, row: number): string[] {
  return Array.from({ length: Math.min(fieldCount(records, row), MOST_CELLS) }, (_, c) => cellText(records, row, c));
}

/** Where one `key: value` of a cell ends and the next begins. */
const NEXT_KEY = /\s*[;|]\s*(?=[^:=：;|]{2,40}[:=：])/;
/** `Patient 17`, `MRN 88417`: a key and a number; `Patient Anna Berg`: a key and a name. */
const NUMBERED = /^[#*"\s]*(\p{L}[\p{L}. ]{1,30}?)\s*#?\s*(\p{Lu}{0,4}-?\d{1,12}\p{Lu}?)$/u;
const NAMED = /^[#*"\s]*(\p{L}+)\s+((?:\p{Lu}[\p{L}'’-]+\s+){1,3}\p{Lu}[\p{L}'’-]+)$/u;
/** Words of titles, which are no names. */
const OF_TITLES =
  /report|data|summary|export|log|list|history|information|info|details|chart|page|file|results?|overview|view|record|bericht|daten|informe|datos|rapport/;

/** `Patient: Anna`, `Patient,Anna`, `Patient Anna Berg`, or the value under a key of the line above. */
function marksOf(line: string[], headers: string[]): PersonMark[] {
  const found: PersonMark[] = [];
  const add = (kind: MarkKind | undefined, value: string | undefined): void => {
    const mark = kind && value !== undefined ? markOf(kind, value) : undefined;
    if (mark) found.push(mark);
  };
  const cells = line.flatMap((cell) => cell.split(NEXT_KEY));
  const filled = cells.filter((cell) => cell !== '');
  cells.forEach((cell, c) => {
    // Times and numbers are no keys.
    if (/^[\d\s.,:/-]*$/.test(cell)) return;
    const parted = /^[#;*"\s]*([^:=：]{2,40}?)\s*[:=：]\s*(.*)$/.exec(cell);
    if (parted && parted[2] !== '') add(markKindOf(parted[1]!), parted[2]);
    else if (parted || !/[:=：]/.test(cell)) {
      const kind = markKindOf((parted?.[1] ?? cell).replace(/^[#*\s]+/, ''));
      const next = cells[c + 1];
      // A row of keys is followed by a row of values; a key beside another key is no value.
      if (kind && next && markKindOf(next) === undefined && filled.length <= 6) add(kind, next);
      else if (!parted && filled.length === 1) add(...inOne(cell));
    }
  });
  if (found.length > 0) return found;
  const keys = headers.map(markKindOf);
  if (keys.some(Boolean) && cells.length <= headers.length && !cells.some(markKindOf))
    for (const [c, cell] of cells.entries()) add(keys[c], cell);
  return found;
}

/** A key and its value with nothing between them, alone on a line. */
function inOne(cell: string): [MarkKind | undefined, string | undefined] {
  const [, key, value] = NUMBERED.exec(cell) ?? NAMED.exec(cell) ?? [];
  if (key === undefined || value === undefined) return [undefined, undefined];
  const isTitle = value.split(/\s+/).some((word) => OF_TITLES.test(plain(word)) || conceptsOf(tokens(word)).size > 0);
  return isTitle ? [undefined, undefined] : [markKindOf(`${key} no`) === 'record' ? 'record' : markKindOf(key), value];
}
