import { expect, test } from 'vitest';
import { judge } from './judge.ts';
import { normal } from './normal.ts';
import { plainest } from './shape.ts';
import { write } from './write.ts';

/** 22:00:17 ends in 00:17, which is no hour that was counted to 24. */
test('hours counted to 24 are written in hours alone, also beside world time', async () => {
  for (const series of ['real-long', 'minute'] as const)
    for (const seed of [4_218_398_826, 7, 8]) {
      const shape = { ...plainest(seed), series, time: 'two-iso', defect: 'hours-to-24', secondClock: 'utc' } as const;
      const written = write(normal({ ...shape }));
      const text = new TextDecoder().decode(written.inputs[0]!.bytes);
      expect(text).toMatch(/24:\d\d:\d\d/);
      expect((await judge(written)).is).toMatch(/^(equal|refused)$/);
    }
});
