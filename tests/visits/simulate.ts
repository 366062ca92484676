import { writeFileSync } from 'node:fs';
import { WORLDS } from '../support/simulatedDays.ts';
import { trendOften } from '../support/trendOften.ts';

/**
 * The larger simulation of the line through several visits, run by hand: `npx tsx tests/visits/simulate.ts [trials]`. Its
 * figures are kept beside it; the tests run a small part of it.
 */
const trials = Number(process.argv[2] ?? 2000);
const tenth = (value: number): number => Math.round(value * 1000) / 10;
const figures = [3, 4, 8].flatMap((visits) =>
  [14, 28].flatMap((days) =>
    WORLDS.flatMap((world) =>
      [0, -0.06, -0.12].map((shift) => {
        const { called, moved } = trendOften(world, { visits, days, shift }, trials);
        return { visits, days, world: world.what, shift, calledPercent: tenth(called), movedPoints: tenth(moved) };
      }),
    ),
  ),
);
const about = `calledPercent: how often the line through time in range was called more than noise; with a shift of 0 these are false alarms. movedPoints: how far time in range truly moved from the first visit to the last, in points. ${trials} people a row.`;
writeFileSync(
  new URL('./simulated.json', import.meta.url),
  `{\n "about": ${JSON.stringify(about)},\n "figures": [\n${figures.map((row) => `  ${JSON.stringify(row)}`).join(',\n')}\n ]\n}\n`,
);
