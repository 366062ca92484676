import { writeFileSync } from 'node:fs';
import { COMPARED } from '../../src/comparing/statistics.ts';
import { comparedOften } from '../support/comparedOften.ts';
import { WORLDS } from '../support/simulatedDays.ts';

/**
 * The larger simulation, run by hand: `npx tsx tests/comparing/simulate.ts [trials]`. Its figures are kept beside it; the
 * tests run a small part of it at every change.
 */
const trials = Number(process.argv[2] ?? 2000);
const percent = (share: number): number => Math.round(share * 1000) / 10;
const figures = [14, 28].flatMap((days) =>
  WORLDS.flatMap((world) =>
    [0, 0.1, 0.2].map((shift) => ({
      days,
      world: world.what,
      correlation: world.correlation,
      levelHigherBy: `${Math.round((Math.exp(shift) - 1) * 100)} %`,
      ...Object.fromEntries(
        Object.entries(comparedOften(world, { trials: days === 14 ? trials : trials / 2, days, shift }, COMPARED)).map(
          ([of, { held, known }]) => [of, { heldPercent: percent(held), toldPercent: percent(known) }],
        ),
      ),
    })),
  ),
);
const about = `heldPercent: intervals that hold the true change (said: 95). toldPercent: verdicts "more than noise"; where the level is not higher these are false alarms, elsewhere it is the power. ${trials} pairs of periods of 14 days, half as many of 28.`;
const rows = figures.map((row) => `  ${JSON.stringify(row)}`).join(',\n');
writeFileSync(
  new URL('./simulated.json', import.meta.url),
  `{\n "about": ${JSON.stringify(about)},\n "figures": [\n${rows}\n ]\n}\n`,
);
