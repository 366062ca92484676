import type { ReadFile, ReadSettings } from '../../src/model/input.ts';
import { readInputs } from '../../src/readers/index.ts';
import { NO_OFFSET } from '../../src/time/offset.ts';

/** The invented day on which every test here is run. */
export const TODAY = '2026-07-01';

/** A reader's work in short lines, so that a table of cases can be read. */
export interface Digest {
  readings: string[];
  notes: string[];
  issues: string[];
  choices: Record<string, string>;
  fates: string;
  file: ReadFile;
}

const clock = (wall: number, timed = true): string => {
  const text = new Date(wall).toISOString();
  return timed
    ? `${text.slice(0, 10)} ${text.slice(11, 16)}${text.slice(17, 19) === '00' ? '' : text.slice(16, 19)}`
    : text.slice(0, 10);
};

const zoned = (offset: number): string => (offset === NO_OFFSET ? '' : ` ${offset >= 0 ? '+' : ''}${offset}`);

/** Reads text or bytes and tells what came out. */
export function tell(content: string | Uint8Array, settings: Partial<ReadSettings> = {}, name = 'sheet.csv'): Digest {
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  const [file] = readInputs([{ name, bytes }], { today: TODAY, ...settings }) as [ReadFile];
  const { readings } = file;
  const lines: string[] = [];
  for (let i = 0; i < readings.count; i++) {
    const sign = readings.limit[i]! < 0 ? '<' : readings.limit[i]! > 0 ? '>' : '';
    const number = Number.isNaN(readings.native[i]) ? '?' : readings.native[i];
    const unit = readings.unit[i] === 0 ? 'mg/dL' : 'mmol/L';
    lines.push(`${clock(readings.wall[i]!)}${zoned(readings.offset[i]!)} ${sign}${number} ${unit}`);
  }
  const notes = file.notes.map((note) =>
    [
      clock(note.wall, note.timed) + zoned(note.offset),
      note.kind,
      note.amount,
      note.unit,
      note.minutes === undefined ? undefined : `${note.minutes} minutes`,
      note.label === undefined ? undefined : `[${note.label}]`,
      note.text === undefined ? undefined : `"${note.text}"`,
    ]
      .filter((part) => part !== undefined)
      .join(' '),
  );
  const issues = file.issues.map(({ code, level, origin }) => `${level} ${code}${origin ? ` ${origin.line}` : ''}`);
  const choices = Object.fromEntries(file.choices.map(({ id, value, by }) => [id, `${by}: ${value}`]));
  const letter = { used: 'u', note: 'n', duplicate: 'd', 'set-aside': 's', ignored: 'i' } as const;
  return { readings: lines, notes, issues, choices, fates: file.fates.map((fate) => letter[fate]).join(''), file };
}

/** Rows of readings every five minutes, for files that need many. */
export function rows(count: number, cells: (i: number, iso: string) => string, start = '2026-01-14T08:00:00Z'): string {
  let text = '';
  for (let i = 0; i < count; i++) text += `${cells(i, new Date(Date.parse(start) + i * 300_000).toISOString())}\n`;
  return text;
}
