import type { ColumnAccount } from '../model/input.ts';
import { printable, type Teller } from './tell.ts';

const LONGEST = 40;

/** The ledger of columns: what each was taken for and what told it, or why it does no harm. */
export function columnLines(tell: Teller, columns: readonly ColumnAccount[]): string[] {
  const rows = columns.map(({ name, role, why, evidence }, i) => {
    const reason = tell.say(`cli.told.columns.${why}`);
    return [
      printable(name === '' ? `#${i + 1}` : name).slice(0, LONGEST),
      role === 'ignore' ? tell.say('cli.told.columns.unused') : role,
      evidence === undefined || evidence === ''
        ? reason
        : tell.say('cli.told.columns.seen', { reason: { told: reason }, evidence: evidence.slice(0, LONGEST) }),
    ];
  });
  const widths = [0, 1].map((column) => Math.max(...rows.map((row) => row[column]!.length)));
  return rows.map(([name, role, why]) => `${name!.padEnd(widths[0]!)}  ${role!.padEnd(widths[1]!)}  ${why}`.trimEnd());
}
