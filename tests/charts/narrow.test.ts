import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../src/analyse.ts';
import { NARROW_WIDTH } from '../../src/charts/frame.ts';
import { compose } from '../../src/compose.ts';
import { CROWD } from '../support/crowd.ts';
import { drawingsIn, touching } from '../support/geometry.ts';
import { analysisOf, stories, wordsOf } from '../support/story.ts';

/** Letters of a chart are enlarged to 1.49 pixels a point on a phone 390 pixels wide: under 11 pixels they are hard to read (ours). */
const LEAST_PRINT = 7.5;
/** A calendar of months is for a large screen; its days stand large beside it. */
const WIDE_STILL = /calendar/;

const everyone: [name: string, make: () => Analysis | Promise<Analysis>][] = [
  ...stories.map((name): [string, () => Promise<Analysis>] => [name, () => analysisOf(name)]),
  ...CROWD.map(({ name, make }): [string, () => Analysis] => [name, make]),
];

// What a phone shows in place of the drawings of both papers: all of it in sight, nothing on anything else.
describe.each(everyone)('%s on a phone', (_, make) => {
  test.each(['en', 'es'])('each drawing has a form that needs no sliding, in %s', async (language) => {
    const analysis = await make();
    for (const voice of ['clinic', 'patient'] as const) {
      const all = drawingsIn(compose(analysis, wordsOf(language), { voice, paper: 'a4' }));
      expect(all.length).toBeGreaterThan(0);
      const broken = all.flatMap(({ page, drawing }) => {
        if (WIDE_STILL.test(drawing.how ?? '')) return [];
        const shown = drawing.width <= NARROW_WIDTH ? drawing : drawing.narrow;
        if (shown === undefined) return [`${page}: ${drawing.how ?? drawing.summary} is ${drawing.width} wide`];
        const small = shown.marks.flatMap((mark) =>
          mark.kind === 'text' && mark.size < LEAST_PRINT ? [`${page}: ${mark.text} has ${mark.size} points`] : [],
        );
        const over = shown.width > NARROW_WIDTH ? [`${page}: ${shown.width} wide`] : [];
        return [...touching(shown).map((what) => `${page} ${drawing.how ?? ''}: ${what}`), ...small, ...over];
      });
      expect(broken).toEqual([]);
    }
  });
});
