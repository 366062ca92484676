import type { MedicineNoted } from '../model/occasions.ts';
import type { Timeline } from '../model/timeline.ts';

/** Notes of medicine by what was noted; case and spaces make no difference. A note without a name stands under ''. */
export function medicationNoted({ days, notes }: Pick<Timeline, 'days' | 'notes'>): MedicineNoted[] {
  const byName = new Map<string, MedicineNoted>();
  for (const { kind, label, text, day, timed, minute } of notes) {
    if (kind !== 'medication') continue;
    const name = (label ?? text ?? '').normalize('NFC').replace(/\s+/g, ' ').trim();
    const key = name.toLowerCase();
    const one = byName.get(key) ?? { name, days: 0, notes: [] };
    byName.set(key, one);
    one.notes.push({ date: days[day]!.date, minute: timed ? minute : null });
  }
  return [...byName.entries()]
    .map(([key, one]) => ({ key, ...one, days: new Set(one.notes.map(({ date }) => date)).size }))
    .sort((a, b) => b.notes.length - a.notes.length || (a.key < b.key ? -1 : 1))
    .map(({ key: _, ...one }) => one);
}
