import { describe, expect, test, vi } from 'vitest';
import { FAULTS, type PlantedFault } from './faults.ts';
import * as sound from './judge.ts';
import { normal } from './normal.ts';
import { plainest, type Shape } from './shape.ts';
import { write } from './write.ts';

/** Plain shapes in which the fault can show, each with other readings. */
const shapesFor = ({ where }: PlantedFault): Shape[] =>
  [1, 2, 3].map((seed) => normal({ ...plainest(seed), ...(where as Partial<Shape>) }));

async function verdicts(shapes: Shape[], { judge }: Pick<typeof sound, 'judge'>): Promise<string[]> {
  const found: string[] = [];
  for (const shape of shapes) found.push((await judge(write(shape))).is);
  return found;
}

const GOOD = /^(equal|refused)$/;

describe('faults planted one by one', () => {
  test.each(FAULTS)('$name: the generator turns red', async (fault) => {
    const shapes = shapesFor(fault);
    expect((await verdicts(shapes, sound)).filter((is) => !GOOD.test(is))).toEqual([]);
    vi.resetModules();
    vi.doMock(fault.module, async (importOriginal) => {
      const real = await importOriginal<Parameters<PlantedFault['change']>[0]>();
      return { ...real, ...fault.change(real) };
    });
    // Loaded anew with all that it stands on; the files stay as they were.
    const spoilt = await verdicts(shapes, await import('./judge.ts'));
    vi.doUnmock(fault.module);
    vi.resetModules();
    expect(
      spoilt.some((is) => !GOOD.test(is)),
      spoilt.join(),
    ).toBe(true);
  });
});
