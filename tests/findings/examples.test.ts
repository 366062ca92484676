import { expect, test } from 'vitest';
import { findings } from '../../src/findings/index.ts';
import { targetSets } from '../../src/targets/index.ts';
import { onlyMeasured } from '../support/measures.ts';
import { examples } from './examples/index.ts';

/**
 * What each finding's examples hand to its sentence and where they point, one line each, so that a wrong count, band or
 * date shows as a changed line. `npm run golden` accepts; read the lines.
 */
test('what the examples tell', async () => {
  const lines = findings.flatMap(({ id, look }) =>
    examples[id].map(([name, given, , set = 'adult']) => {
      const { case: which, ...more } = look(onlyMeasured(given), targetSets[set]);
      return `${id} · ${name}: ${which} ${JSON.stringify(more)}`;
    }),
  );
  await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot('examples.txt');
});
