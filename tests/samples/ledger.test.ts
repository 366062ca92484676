import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Input, ReadFile } from '../../src/model/input.ts';
import { readInputs } from '../../src/readers/index.ts';
import { buildTimeline } from '../../src/timeline/index.ts';
import { rowsAddUp } from './stories.ts';

// Whatever comes in is found again in the account, row by row, and neither the order of rows nor their spread over
// files changes what is worked out.

type Kind = 'reading' | 'note' | 'fault' | 'title';
interface Row {
  text: string;
  kind: Kind;
}

const HEADER = 'Time,Sensor glucose (mg/dL),Carbs (g),Note';
const START = Date.UTC(2026, 2, 2);
const at = (minute: number): string => new Date(START + minute * 60_000).toISOString().slice(0, 16).replace('T', ' ');
const reading = (i: number): Row => ({ text: `${at(i * 5)},${100 + ((i * 37) % 90)},,`, kind: 'reading' });
const note = (i: number): Row => ({ text: `${at(i * 60 + 2)},,${20 + i},`, kind: 'note' });
const FAULTS = [
  '2026-06-31 08:00,120,,',
  '2026-03-02 56:35,120,,',
  '2204-03-02 08:00,120,,',
  '1970-01-01 00:05,120,,',
  '2026-03-02 08:01,0,,',
  '2026-03-02 08:02,65535,,',
  '2026-03-02 08:03,5/6,,',
  '2026-03-02 08:04,abc,,',
  '2026-03-02 08:06,-12,,',
  '2026-03-02 08:07,0x41,,',
  '2026-03-02 08:08,1e999,,',
  '2026-03-02 08:09,,,',
  '2026-03-02 08:11,NA,,',
  '2026-03-02 08:12,120,,,,too long',
  '12.3.x,120,,',
];
const TITLES = ['Average,142,,', 'Total rows: 500,,,', ',,,', ''];

const readings = Array.from({ length: 120 }, (_, i) => reading(i));
const notes = Array.from({ length: 6 }, (_, i) => note(i));

/** Every second row or so may come again; faults and titles anywhere; then cut into files. */
const scene = fc
  .record({
    again: fc.subarray([...readings, ...notes]),
    faults: fc.array(fc.constantFrom(...FAULTS), { maxLength: 12 }),
    titles: fc.array(fc.constantFrom(...TITLES), { maxLength: 6 }),
    cuts: fc.array(fc.double({ min: 0, max: 0.999, noNaN: true }), { maxLength: 3 }),
    seed: fc.integer(),
  })
  .chain(({ again, faults, titles, cuts }) => {
    const rows: Row[] = [
      ...readings,
      ...notes,
      ...again,
      ...faults.map((text) => ({ text, kind: 'fault' as const })),
      ...titles.map((text) => ({ text, kind: 'title' as const })),
    ];
    return fc.record({
      rows: fc.shuffledSubarray(rows, { minLength: rows.length, maxLength: rows.length }),
      cuts: fc.constant(cuts),
      again: fc.constant(again.length),
    });
  });

function filesOf(rows: Row[], cuts: number[]): { inputs: Input[]; parts: Row[][] } {
  const places = [0, ...cuts.map((cut) => Math.floor(cut * rows.length)).sort((a, b) => a - b), rows.length];
  const parts = places.slice(1).map((to, i) => rows.slice(places[i], to));
  const inputs = parts.map((part, i) => ({
    name: `part-${i}.csv`,
    bytes: new TextEncoder().encode([HEADER, ...part.map(({ text }) => text)].join('\n')),
  }));
  return { inputs, parts };
}

const settle = (inputs: Input[]) => {
  const files = readInputs(inputs, { today: '2026-07-01' });
  return { files, ...buildTimeline(files, {}) };
};

const numbers = (intake: ReturnType<typeof settle>) => {
  const { issues: _, notes: placed, ...rest } = intake.timeline!;
  return JSON.stringify({
    ...rest,
    readings: Object.fromEntries(
      Object.entries(rest.readings).map(([name, column]) => [name, typeof column === 'number' ? column : [...column]]),
    ),
    notes: placed.map(({ origin: __, row: ___, ...note }) => note),
  });
};

/** Which lines of a file gave what; together they must be all its lines. */
function linesOf(file: ReadFile, setAside: { file: string; line: number }[]): Map<number, Set<Kind>> {
  const lines = new Map<number, Set<Kind>>();
  const put = (line: number, kind: Kind) => lines.set(line, (lines.get(line) ?? new Set()).add(kind));
  for (const line of file.readings.line) put(line, 'reading');
  for (const { origin } of file.notes) put(origin.line, 'note');
  for (const { file: name, line } of setAside) if (name === file.name) put(line, 'fault');
  file.fates.forEach((fate, row) => {
    // One row a line here, so that row n stands on line n + 1.
    if (fate === 'ignored') put(row + 1, 'title');
  });
  return lines;
}

describe('the ledger', () => {
  const plain = numbers(settle(filesOf([...readings, ...notes], []).inputs));

  it('holds every row once, whatever the order, repeats, faults and files', () => {
    fc.assert(
      fc.property(scene, ({ rows, cuts, again }) => {
        const { inputs, parts } = filesOf(rows, cuts);
        const intake = settle(inputs);
        const { total, files, setAside, ledgers } = intake;
        expect(rowsAddUp(total)).toBe(true);
        for (const { ledger } of ledgers) expect(rowsAddUp(ledger)).toBe(true);
        const many = (kind: Kind) => rows.filter((row) => row.kind === kind).length;
        expect(total).toMatchObject({
          used: readings.length,
          notes: notes.length,
          duplicate: again,
          setAside: many('fault'),
          rows: inputs.length + rows.length - parts.filter((part) => part.at(-1)?.text === '').length,
        });
        // Every row is found again where it stood, as what it was.
        files.forEach((file, f) => {
          const lines = linesOf(file, setAside);
          expect([...(lines.get(1) ?? [])]).toEqual(['title']);
          parts[f]!.forEach((row, i) => {
            const last = i === parts[f]!.length - 1 && row.text === '';
            if (!last) expect([row.text, ...(lines.get(i + 2) ?? [])]).toEqual([row.text, row.kind]);
          });
        });
        expect(numbers(intake)).toBe(plain);
      }),
      { numRuns: 60 },
    );
  });

  it('lists every place that was not used, however many', () => {
    const faults = Array.from({ length: 300 }, (_, i) => ({ text: `${at(i * 5 + 1)},zz,,`, kind: 'fault' as const }));
    const { setAside, total } = settle(filesOf([...readings, ...faults], []).inputs);
    expect(total.setAside).toBe(300);
    expect(setAside.map(({ line }) => line)).toEqual(faults.map((_, i) => readings.length + 2 + i));
  });

  it('lists readings that contradict each other, on both lines', () => {
    const { setAside } = settle(filesOf([...readings, { text: `${at(5)},300,,`, kind: 'fault' }], []).inputs);
    expect(setAside).toMatchObject([
      { line: 3, code: 'row-contradicts', actual: '2026-03-02 00:05 137 mg/dL' },
      { line: readings.length + 2, code: 'row-contradicts', actual: '2026-03-02 00:05 300 mg/dL' },
    ]);
  });
});
