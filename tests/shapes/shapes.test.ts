import { expect, test } from 'vitest';
import { shapeOf } from './cover.ts';
import { judge } from './judge.ts';
import { kindOf, tellShape } from './minimal.ts';
import { write } from './write.ts';

/**
 * Other shapes in every run; the same again by `SHAPES_SEED=7`, and thousands by `npm run shapes`. Half of the 240 of a run are tried on
 * this side of the world, half on the other.
 */
const SEED = Number(process.env.SHAPES_SEED ?? Date.now() % 1_000_000);
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
