import { count, dates, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, quiet } from './finding.ts';

/** A medicine is noted that the literature lists as able to push sensor numbers up or down: a question, no correction. */
export const medicinesNoted: Finding<'medicines-noted'> = {
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
};
