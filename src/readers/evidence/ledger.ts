import type { ColumnAccount } from '../../model/input.ts';
import { type Column, columnOf } from '../table/header.ts';
import { cellText, locate, type Records } from '../table/records.ts';
import type { Table } from '../table/tables.ts';
import type { Claimed } from './claim.ts';
import { describe, type Profile, SAMPLE } from './describe.ts';

/** Share of the rows from which on something is said to stand in every row; rows of other things lie between (ours). */
const MOST_ROWS = 0.5;

/**
 * Every column of a table with what it was taken for and what told it, or why it cannot change the readings. A column that looked empty in
 * a sample of the rows is looked through.
 */
export function columnLedger(
  records: Records,
  { from, to }: Table,
  columns: Column[],
  { columns: claimed, profiles, accounts }: Claimed,
): ColumnAccount[] {
  return columns.map((column, i) => {
    const { role, given } = column;
    const name = column.name === '' ? `#${column.index + 1}` : column.name;
    const profile = seenIn(records, from, to, profiles[i]);
    const settled = accounts.get(column.index);
    if (given) return { name, role: column.mixed ? 'mixed' : role, why: 'layout' };
    if (
      settled &&
      !(settled.why === 'constant' && !isFull(profile)) &&
      (role === 'ignore' || role === claimed[i]?.role)
    )
      return { name, role, ...settled };
    if (role !== 'ignore') {
      if (name.startsWith('#') || column.maybe || column.seen) return { name, role, why: 'cells', ...shown(profile) };
      const byName = [role, 'glucose'].includes(columnOf(column.index, name).role) || claimed[i]?.role === role;
      return { name, role, why: byName ? 'name' : 'beside', ...shown(profile) };
    }
    return { name, role, ...unused(profile) };
  });
}

/** The profile with the first cell that is filled, where the sample met none. */
function seenIn(records: Records, from: number, to: number, profile: Profile | undefined): Profile | undefined {
  if (profile?.kind !== 'empty' || to - from <= SAMPLE) return profile;
  const span = { from: 0, to: 0 };
  for (let r = from; r < to; r++) {
    if (!locate(records, r, profile.index, span)) continue;
    const example = cellText(records, r, profile.index);
    return { ...profile, kind: 'text', example };
  }
  return profile;
}

/** What stands here and there in columns that nothing is read from, such as the sums of a table of hours. */
export function unusedColumns(
  records: Records,
  { from, to }: Pick<Table, 'from' | 'to'>,
  named: readonly { index: number; name: string }[],
): ColumnAccount[] {
  const profiles = describe(
    records,
    from,
    to,
    named.map(({ index }) => index),
  );
  return named.map(({ name }, i) => ({ name, role: 'ignore', ...unused(seenIn(records, from, to, profiles[i])) }));
}

const isFull = (profile: Profile | undefined): boolean => profile !== undefined && profile.filled >= MOST_ROWS;

function unused(profile: Profile | undefined): Pick<ColumnAccount, 'why' | 'evidence'> {
  if (!profile) return { why: 'empty' };
  switch (profile.kind) {
    case 'empty':
      return { why: 'empty' };
    case 'constant':
      // What stands in a few rows only is no mark of the whole file.
      if (!isFull(profile)) break;
      return { why: 'constant', evidence: profile.example };
    case 'serial':
      return { why: 'serial', ...shown(profile) };
    case 'time':
    case 'clock':
    case 'half':
      return { why: 'times', evidence: profile.example };
    case 'number':
      return { why: 'numbers', ...shown(profile) };
    default:
  }
  return { why: /^[\d.,]+$/.test(profile.example) ? 'numbers' : 'words', evidence: profile.example };
}

/** A range of numbers, or the first cell. */
function shown(profile: Profile | undefined): { evidence?: string } {
  if (!profile || profile.kind === 'empty') return {};
  const { kind, low, high } = profile;
  if (kind === 'number' || kind === 'serial') return { evidence: low === high ? `${low}` : `${low}-${high}` };
  return { evidence: profile.example };
}
