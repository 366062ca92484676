import type { MedicinesNoted } from '../model/trust.ts';
import type { Measure } from './measure.ts';

/**
 * Notes that name a medicine which the literature lists as able to push sensor numbers up or down. Whether it does
 * depends on the sensor: it is a question, and nothing is corrected. The list stands in templates/medicines.json.
 */
export const medicinesNoted: Measure<'medicinesNoted'> = {
  id: 'medicinesNoted',
  source: 'Endocr Rev 2020;41:756-774, table 4; Diabetes 2020;69(Suppl 1):903-P',
  needs: {},
  definition: {},
  compute({ timeline, medicines }) {
    if (timeline.notes.length === 0) return { ok: false, why: 'none-noted' };
    const list: MedicinesNoted['list'] = [];
    const wanted = medicines.map(({ id, words }) => ({
      id,
      words: words.map((word) => [word, ` ${plain(word)} `] as const),
    }));
    for (const note of timeline.notes) {
      const noted = ` ${plain(note.label ?? '')} ${plain(note.text ?? '')} `;
      for (const { id, words } of wanted) {
        const word = words.find(([, bare]) => noted.includes(bare))?.[0];
        if (word === undefined) continue;
        const { date } = timeline.days[note.day]!;
        list.push({ id, noted: word, date, minute: note.timed ? note.minute : null });
      }
    }
    return { ok: true, value: { list }, n: timeline.notes.length, of: 'notes' };
  },
};

/** Lower case, with single spaces for everything that is no letter or digit. */
function plain(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}
