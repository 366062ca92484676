import type { Ledger, ReadFile, RowFate } from '../model/input.ts';
import { DUPLICATE, KEPT } from './placed.ts';

/** Strength of a fate when a record gave several entries; 0 leaves the reader's word. */
const SET_ASIDE_RANK = 1;
const DUPLICATE_RANK = 2;
const NOTE_RANK = 3;
const USED_RANK = 4;

/** What became of a file's readings and notes, entry by entry. */
export interface Outcome {
  readings: Uint8Array;
  notes: Uint8Array;
}

/** Counts the fates of a file's records after the timeline. Without an outcome, as the reader left them. */
export function settleLedger(file: ReadFile, outcome?: Outcome): Ledger {
  const ledger: Ledger = { rows: file.fates.length, used: 0, duplicate: 0, setAside: 0, notes: 0, ignored: 0 };
  const ranks = outcome && rankRows(file, outcome);
  for (let row = 0; row < file.fates.length; row++) count(ledger, fateOf(ranks?.[row] ?? 0, file.fates[row]!));
  return ledger;
}

export function sumLedgers(ledgers: Ledger[]): Ledger {
  const total: Ledger = { rows: 0, used: 0, duplicate: 0, setAside: 0, notes: 0, ignored: 0 };
  for (const ledger of ledgers) {
    total.rows += ledger.rows;
    total.used += ledger.used;
    total.duplicate += ledger.duplicate;
    total.setAside += ledger.setAside;
    total.notes += ledger.notes;
    total.ignored += ledger.ignored;
  }
  return total;
}

function rankRows(file: ReadFile, outcome: Outcome): Uint8Array {
  const ranks = new Uint8Array(file.fates.length);
  const { count: readings, row } = file.readings;
  const raise = (at: number, rank: number) => {
    if (ranks[at]! < rank) ranks[at] = rank;
  };
  for (let i = 0; i < readings; i++) raise(row[i]!, rankOf(outcome.readings[i]!, USED_RANK));
  file.notes.forEach((note, n) => {
    raise(note.row, rankOf(outcome.notes[n]!, NOTE_RANK));
  });
  return ranks;
}

function rankOf(lost: number, kept: number): number {
  if (lost === KEPT) return kept;
  return lost === DUPLICATE ? DUPLICATE_RANK : SET_ASIDE_RANK;
}

function fateOf(rank: number, readers: RowFate): RowFate {
  if (rank === USED_RANK) return 'used';
  if (rank === NOTE_RANK) return 'note';
  if (rank === DUPLICATE_RANK) return 'duplicate';
  return rank === SET_ASIDE_RANK ? 'set-aside' : readers;
}

function count(ledger: Ledger, fate: RowFate): void {
  if (fate === 'used') ledger.used++;
  else if (fate === 'note') ledger.notes++;
  else if (fate === 'duplicate') ledger.duplicate++;
  else if (fate === 'set-aside') ledger.setAside++;
  else ledger.ignored++;
}
