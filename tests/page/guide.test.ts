import { describe, expect, test } from 'vitest';
import { guidePictures } from '../../src/build/guidePictures.ts';
import { GUIDES } from '../../src/page/guide.ts';
import { everyMessage } from '../support/everyMessage.ts';
import { home, wordsOf } from '../support/story.ts';

interface Screen {
  guide: Record<'patient' | 'clinic', Record<string, string | object>>;
}

const pictures = guidePictures(home);

describe.each(['en', 'es'] as const)('the guides of the page, %s', (language) => {
  const { guide, ...screen } = (wordsOf(language) as { screen: Screen & Record<string, object> }).screen;

  test('what they name is called so on the page', () => {
    const named = everyMessage(guide).flatMap(([key, text]) =>
      [...text.matchAll(/“([^”]+)”/g)].map(([, quoted]) => ({ key, quoted: quoted! })),
    );
    expect(named.length).toBeGreaterThan(10);
    const texts = everyMessage(screen).map(([, text]) => text);
    expect(named.filter(({ quoted }) => !texts.some((text) => text.startsWith(quoted)))).toEqual([]);
  });

  test.each(['patient', 'clinic'] as const)('%s: every part has a title and a text, and two pages hold it', (whose) => {
    const { name: _, lead, ...parts } = guide[whose];
    expect(Object.keys(parts).sort()).toEqual(GUIDES[whose].map(({ name }) => name).sort());
    for (const [name, part] of Object.entries(parts)) expect(Object.keys(part), name).toEqual(['title', 'text']);
    const words = everyMessage(guide[whose]).flatMap(([, text]) => text.split(/\s+/));
    // Two printed pages with their pictures hold some 700 words (ours).
    expect(words.length).toBeLessThan(700);
  });

  test.each(['patient', 'clinic'] as const)('%s: each picture says how it is read and what it shows', async (whose) => {
    const all = await pictures(whose, language);
    expect(all).toHaveLength(3);
    for (const { read, shows, svg } of all) {
      expect(read.length).toBeGreaterThan(20);
      expect(svg).toContain(shows.slice(0, 20));
      expect(svg).not.toMatch(/<script|href=|<foreignObject/i);
    }
  });
});
