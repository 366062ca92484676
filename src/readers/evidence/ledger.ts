import type { ColumnAccount } from '../../model/input.ts';
import { type Column, columnOf } from '../table/header.ts';
import type { Claimed } from './claim.ts';
import type { Profile } from './describe.ts';

/** Every column of a table with what it was taken for and what told it, or why it cannot change the readings. */
export function columnLedger(columns: Column[], { columns: claimed, profiles, accounts }: Claimed): ColumnAccount[] {
  return columns.map((column, i) => {
    const { name, role, given } = column;
    const profile = profiles[i];
    const settled = accounts.get(column.index);
    if (given) return { name, role: column.mixed ? 'mixed' : role, why: 'layout' };
    if (settled && (role === 'ignore' || role === claimed[i]?.role)) return { name, role, ...settled };
    if (role !== 'ignore') {
      if (name.startsWith('#') || column.maybe || column.seen) return { name, role, why: 'cells', ...shown(profile) };
      const byName = [role, 'glucose'].includes(columnOf(column.index, name).role) || claimed[i]?.role === role;
      return { name, role, why: byName ? 'name' : 'beside', ...shown(profile) };
    }
    return { name, role, ...unused(profile) };
  });
}

function unused(profile: Profile | undefined): Pick<ColumnAccount, 'why' | 'evidence'> {
  if (!profile) return { why: 'empty' };
  switch (profile.kind) {
    case 'empty':
      return { why: 'empty' };
    case 'constant':
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
      return { why: 'words', evidence: profile.example };
  }
}

/** A range of numbers, or the first cell. */
function shown(profile: Profile | undefined): { evidence?: string } {
  if (!profile || profile.kind === 'empty') return {};
  if (profile.kind === 'number' || profile.kind === 'serial') return { evidence: `${profile.low}-${profile.high}` };
  return { evidence: profile.example };
}
