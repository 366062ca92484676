import type { NoteEntry, NotePlace } from '../../model/input.ts';
import type { Column } from '../table/header.ts';
import { cellText, type Records } from '../table/records.ts';
import { type Amount, readAmount, readMinutes, readNamedDose } from './amounts.ts';
import { isRest, type RowKind } from './kinds.ts';

/** The one unit these amounts may have; any other is kept as words. */
const ONLY: Partial<Record<RowKind, string>> = { insulin: 'IU', 'insulin-rate': 'IU/h', meal: 'g' };

/**
 * The note of a row whose kind stands in a column of its own and whose amount stands in a shared value column. The
 * unit comes from a unit column, the cell, or nowhere: then the amount is kept without one.
 */
export function noteOfKind(
  records: Records,
  row: number,
  kind: Exclude<RowKind, 'reading' | 'glucose'>,
  kindText: string,
  value: Column | undefined,
  unit: string | undefined,
  words: string,
  at: NotePlace,
): { note?: NoteEntry; rest: boolean; bare: boolean; zero?: boolean } {
  const raw = value ? cellText(records, row, value.index) : '';
  const note: NoteEntry = { ...at, kind: kind === 'nutrient' ? 'meal' : kind };
  let bare = false;
  if (kind === 'exercise') {
    if (isRest(kindText) || isRest(words)) return { rest: true, bare };
    const minutes = raw === '' ? undefined : readMinutes(raw, unit ?? value?.unit);
    if (minutes !== undefined) note.minutes = minutes;
    else if (raw !== '') {
      note.text = unit ? `${raw} ${unit}` : raw;
      bare = unit === undefined;
    }
    note.label = words === '' ? kindText : words;
    return { note, rest: false, bare };
  }
  if (kind === 'nutrient') {
    if (raw === '' || /^0+(?:[.,]0+)?$/.test(raw)) return { rest: false, bare, zero: raw !== '' };
    note.text = [kindText, raw, unit ?? ''].filter((part) => part !== '').join(' ');
    if (words !== '') note.label = words;
    return { note, rest: false, bare };
  }
  if (kind === 'text' || kind === 'alarm' || kind === 'sensor') {
    const text = [raw, words].filter((part) => part !== '').join('; ');
    if (kind === 'text') note.text = text === '' ? kindText : text;
    else {
      note.label = kindText;
      if (text !== '') note.text = text;
    }
    return { note, rest: false, bare };
  }
  if (raw !== '') {
    const only = ONLY[kind];
    const named = kind === 'insulin' ? readNamedDose(raw) : undefined;
    const amount: Amount = named ? { ...named, unit: 'IU', text: raw } : readAmount(raw, unit ?? value?.unit, only);
    if (named) words = [named.label, words].filter((part) => part !== '').join(' ');
    // A dose of 0 is none, and a meal of 0 without a name is none.
    if (amount.amount === 0 && (kind === 'insulin' || (kind === 'meal' && words === '')))
      return { rest: false, bare, zero: true };
    if (amount.amount === undefined || (only && amount.unit && amount.unit !== only)) {
      note.text = amount.unit ? `${amount.text} ${amount.unit}` : amount.text;
    } else {
      note.amount = amount.amount;
      if (amount.unit !== undefined) note.unit = amount.unit;
      else bare = true;
    }
  }
  if (kind === 'insulin' || kind === 'insulin-rate') note.label = words === '' ? kindText : `${kindText} ${words}`;
  else if (words !== '') note.label = words;
  else if (kind === 'meal' || kind === 'medication') note.label = kindText;
  // A suspension needs no number.
  if (raw === '' && words === '' && kind !== 'insulin-rate') return { rest: false, bare };
  return { note, rest: false, bare };
}
