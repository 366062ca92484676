import { expect, test } from 'vitest';
import { shapeOf } from './cover.ts';
import { judge } from './judge.ts';
import { kindOf, tellShape } from './minimal.ts';
import { write } from './write.ts';

/**
 * The same shapes in every run, so that it passes or fails for what was changed and nothing else; others by `SHAPES_SEED=7`, thousands
 * by `npm run shapes`. Half of the 240 are tried on this side of the world, half on the other.
 */
const SEED = Number(process.env.SHAPES_SEED ?? 20_261_125);
const COUNT = 120;
const FROM = process.env.TZ === 'UTC' ? 0 : COUNT;
/** Of shapes that leave nothing open, so many may be asked about. */
const ASKED = 0.05;

test(`shapes of seed ${SEED} are read as they were written, or asked about`, async () => {
  const wrong: string[] = [];
  let closed = 0;
  let asked = 0;
  for (let n = FROM; n < FROM + COUNT; n++) {
    const written = write(shapeOf(SEED, n));
    const verdict = await judge(written);
    const isClosed = written.open.length + written.never.length === 0;
    if (isClosed) closed++;
    if (isClosed && verdict.is === 'refused') asked++;
    if (verdict.is === 'equal' || verdict.is === 'refused') continue;
    wrong.push(
      `${kindOf(verdict)} | seed ${SEED}, shape ${n}: ${tellShape(written.shape)} | ${verdict.differences[0]?.detail}`,
    );
  }
  expect(wrong).toEqual([]);
  expect(asked).toBeLessThanOrEqual(Math.ceil(closed * ASKED));
});
