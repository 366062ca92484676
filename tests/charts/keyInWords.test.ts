import { describe, expect, test } from 'vitest';
import { compose } from '../../src/compose.ts';
import type { Mark } from '../../src/model/drawing.ts';
import { asPrinted } from '../../src/writers/pdf/index.ts';
import { drawingsIn } from '../support/geometry.ts';
import { analysisOf, fonts, stories, wordsOf } from '../support/story.ts';

const isName = (mark: Mark): mark is Extract<Mark, { kind: 'text' }> => mark.kind === 'text' && mark.anchor === 'start';

describe.each(stories)('%s', (story) => {
  test.each(['en', 'es'])('a key says in words as many signs as it names, in %s', async (language) => {
    const report = compose(await analysisOf(story), wordsOf(language), { voice: 'clinic', paper: 'a4' });
    const keys = drawingsIn(asPrinted(report, fonts(), { version: 't' })).filter(({ drawing }) =>
      /^(\d+|One|Un) (signs?|signos?) /.test(drawing.summary),
    );
    expect(keys.length).toBeGreaterThan(0);
    for (const { drawing } of keys) {
      const names = drawing.marks.filter(isName).map(({ text }) => text);
      const [, said = ''] = drawing.summary.split(/: (.*)\./s);
      expect(said.split('; '), drawing.summary).toHaveLength(names.length);
      for (const name of names) expect(drawing.summary).toContain(name);
      expect(drawing.summary).toMatch(new RegExp(`^${names.length} `));
    }
  });
});
