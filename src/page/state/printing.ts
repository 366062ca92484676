import type { Sheet, Showing } from '../messages.ts';
import type { State } from './state.ts';

/** The papers of a visit, in order of print. */
export const PAPERS: readonly Sheet[] = ['clinic', 'patient', 'further'];

/** What is printed one after the other, exactly what is ticked: the report with its sheet of remarks, without it, or that alone. */
export function toPrint({ sheets, read }: Pick<State, 'sheets' | 'read'>): [Sheet, Showing['remarks']][] {
  const remarks = read?.remarks === true && sheets.includes('remarks');
  return PAPERS.flatMap((sheet): [Sheet, Showing['remarks']][] => {
    if (sheet !== 'clinic') return sheets.includes(sheet) ? [[sheet, 'with']] : [];
    if (sheets.includes('clinic')) return [[sheet, remarks ? 'with' : 'without']];
    return remarks ? [[sheet, 'alone']] : [];
  });
}
