import { expect } from 'vitest';
import type { ReadFile } from '../../src/model/input.ts';

/** What holds for every file whatever is in it. */
export function sound(file: ReadFile): void {
  const { readings, fates, notes } = file;
  const fateOf = new Set(['used', 'note', 'duplicate', 'set-aside', 'ignored']);
  expect(fates.every((fate) => fateOf.has(fate))).toBe(true);
  const given = new Set<number>();
  for (let i = 0; i < readings.count; i++) {
    expect(fates[readings.row[i]!]).toBe('used');
    given.add(readings.row[i]!);
    expect(Number.isFinite(readings.wall[i])).toBe(true);
    expect(readings.unit[i]! <= 1).toBe(true);
    expect(Number.isNaN(readings.native[i]) && readings.limit[i] === 0).toBe(false);
  }
  for (const note of notes) {
    expect(['note', 'used']).toContain(fates[note.row]);
    given.add(note.row);
    expect(Number.isFinite(note.wall)).toBe(true);
    expect(note.amount === undefined || Number.isFinite(note.amount)).toBe(true);
    expect(note.minutes === undefined || Number.isFinite(note.minutes)).toBe(true);
    for (const words of [note.unit, note.label, note.text])
      expect(['undefined', 'string'].includes(typeof words)).toBe(true);
  }
  // Every record that gave something is called used or note, and no other is.
  expect(fates.filter((fate) => fate === 'used' || fate === 'note').length).toBe(given.size);
  // A row set aside is told: by its line, within a count, or by the refusal that stopped the table.
  if (fates.includes('set-aside')) expect(file.issues.length).toBeGreaterThan(0);
}
