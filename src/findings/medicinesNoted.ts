import type { Measured } from '../model/measured.ts';
import type { MedicinesNoted } from '../model/trust.ts';
import { exampleDate } from './examples.ts';
import { absent, type Finding, holds, quiet } from './finding.ts';
import { count, dates, word } from './quantities.ts';

/** A medicine is noted that the literature lists as able to push sensor numbers up or down: a question, no correction. */
export const medicinesNoted: Finding = {
  id: 'medicines-noted',
  source: 'Endocr Rev 2020;41:756-774, table 4; Diabetes 2020;69(Suppl 1):903-P',
  look({ medicinesNoted }) {
    if (!medicinesNoted.ok) return quiet(medicinesNoted.why);
    const { list } = medicinesNoted.value;
    if (list.length === 0) return absent;
    const days = [...new Set(list.map(({ date }) => date))];
    return holds(
      {
        medicine: word([...new Set(list.map(({ noted }) => noted))].join(', ')),
        count: count(list.length),
        days: count(days.length),
        dates: dates(days),
      },
      list.map(({ date }) => ({ date })),
    );
  },
  examples: [
    ['noted once', { medicinesNoted: noted(1) }, 'holds'],
    ['not noted', { medicinesNoted: noted(0) }, 'absent'],
    ['no notes at all', { medicinesNoted: { ok: false, why: 'none-noted' } }, 'absent'],
  ],
};

function noted(times: number): Measured<MedicinesNoted> {
  const list = Array.from({ length: times }, (_, day) => ({
    id: 'acetaminophen',
    noted: 'paracetamol',
    date: exampleDate(day),
    minute: 480,
  }));
  return { ok: true, value: { list }, n: 10, of: 'notes' };
}
