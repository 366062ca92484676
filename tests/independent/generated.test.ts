import { spawn, spawnSync } from 'node:child_process';
import { appendFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { expect } from 'vitest';
import { analyse } from '../../src/analyse.ts';
import type { Settings } from '../../src/model/settings.ts';
import { needs } from '../support/tools.ts';
import { differences, type Figures, foundIn } from './compared.ts';

/**
 * How many are compared, and from which number on: every push takes the first few, a person may take thousands with
 * `GENERATED=5000 npx vitest run --config tests/vitest.config.ts --project utc tests/independent/generated.test.ts`.
 */
const COUNT = Number(process.env.GENERATED ?? 60);
const FIRST = Number(process.env.GENERATED_FROM ?? 1);
/** A file that gets a line for each case that differs. */
const REPORT = process.env.GENERATED_REPORT;

/** Relative: the two add up in another order, and the figures carry twelve digits. */
const PARTS = 1e-9;

/** As generated.py writes it. */
interface Case {
  number: number;
  tells: unknown[];
  files: { name: string; text: string }[];
  settings: Pick<Settings, 'targets' | 'period' | 'dateOrder' | 'zone'>;
  figures: Figures & { used: number; duplicates: number; setAside: number };
}

function differencesOf({ files, settings, figures }: Case): string[] {
  const inputs = files.map(({ name, text }) => ({ name, bytes: new TextEncoder().encode(text) }));
  // Values are drawn at random around the limits, which no body does: that they are readings is said here.
  const layout = { series: 'confirmed' };
  const analysis = analyse(inputs, { ...settings, layout, today: '2026-01-01', person: {} }, 'test');
  if (!analysis.ok) return [`refused: ${JSON.stringify(analysis.issues)}`];
  const { duplicate, setAside, used } = analysis.ledger;
  return differences({ ...foundIn(analysis), used, duplicates: duplicate, setAside }, figures, PARTS);
}

/** Needs Python 3 with the zones of the world. */
const ready = spawnSync('python3', ['-c', 'import zoneinfo; zoneinfo.ZoneInfo("Pacific/Auckland")']).status === 0;

needs('python3 with the zones of the world', ready)(
  'made-up exports give the figures that a second program works out from them',
  async () => {
    const script = new URL('generated.py', import.meta.url).pathname;
    const python = spawn('python3', [script, `${FIRST}`, `${COUNT}`], { stdio: ['ignore', 'pipe', 'inherit'] });
    const ended = new Promise((resolve) => python.once('close', (code, signal) => resolve(signal ?? code)));
    let compared = 0;
    const wrong: unknown[] = [];
    for await (const line of createInterface({ input: python.stdout })) {
      const each: Case = JSON.parse(line);
      const found = differencesOf(each);
      compared++;
      if (found.length === 0) continue;
      wrong.push([each.number, found.slice(0, 3)]);
      if (REPORT)
        appendFileSync(REPORT, `${JSON.stringify([each.number, each.tells, found.slice(0, 8), found.length])}\n`);
    }
    // A run cut short has compared less than it says.
    expect([compared, await ended]).toEqual([COUNT, 0]);
    expect(wrong.slice(0, 20)).toEqual([]);
  },
  3_600_000,
);
