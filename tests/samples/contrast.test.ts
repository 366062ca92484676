import { describe, expect, test } from 'vitest';
import { compose } from '../../src/compose.ts';
import { COLOUR, GREY, type Palette } from '../../src/writers/palette.ts';
import { contrast, type Rgb, rgbOf } from '../support/colour.ts';
import { type Operation, operationsOf } from '../support/pdfContent.ts';
import { wordsOf } from '../support/story.ts';
import { operators, write } from '../writers/paper.ts';
import { analyseStory, held, storyNames } from './stories.ts';

const WHITE: Rgb = [1, 1, 1];

interface Area {
  left: number;
  top: number;
  right: number;
  bottom: number;
  colour: Rgb;
}

/** Contrast of each text with the last area drawn before it that holds its first letter; white paper where none does. */
function contrasts(content: string): { ratio: number; on: Rgb; text: Rgb; size: number }[] {
  const found: { ratio: number; on: Rgb; text: Rgb; size: number }[] = [];
  const areas: Area[] = [];
  let fill: Rgb = [0, 0, 0];
  let points: [number, number][] = [];
  let [x, y, size] = [0, 0, 0];
  const numbers = ({ operands }: Operation): number[] => operands.map(Number).filter(Number.isFinite);
  for (const operation of operationsOf(content)) {
    const n = numbers(operation);
    switch (operation.operator) {
      case 'rg':
        fill = n as unknown as Rgb;
        break;
      case 'm':
        points.push([n[0]!, n[1]!]);
        break;
      case 'l':
        points.push([n[0]!, n[1]!]);
        break;
      case 'c':
        points.push([n[4]!, n[5]!]);
        break;
      case 're':
        points.push([n[0]!, n[1]!], [n[0]! + n[2]!, n[1]! + n[3]!]);
        break;
      case 'S':
      case 'n':
        points = [];
        break;
      case 'f*': {
        const [xs, ys] = [points.map(([px]) => px), points.map(([, py]) => py)];
        areas.push({
          left: Math.min(...xs),
          right: Math.max(...xs),
          top: Math.min(...ys),
          bottom: Math.max(...ys),
          colour: fill,
        });
        points = [];
        break;
      }
      case 'Tf':
        size = n.at(-1)!;
        break;
      case 'Tm':
        [x, y] = [n[4]!, n[5]!];
        break;
      case 'TJ': {
        // Somewhat into the first letter, and above its foot.
        const [px, py] = [x + size * 0.2, y - size * 0.3];
        const under = areas.findLast((it) => px >= it.left && px <= it.right && py >= it.top && py <= it.bottom);
        const on = under?.colour ?? WHITE;
        found.push({ ratio: contrast(fill, on), on, text: fill, size: size / 100 });
      }
    }
  }
  return found;
}

const inks = (palette: Palette): Set<string> =>
  new Set(
    Object.values(palette).flatMap((ink) =>
      [ink.text, ink.on].map((hex) =>
        rgbOf(hex)
          .map((v) => v.toFixed(2))
          .join(),
      ),
    ),
  );

/** WCAG 2.2, 1.4.3: 4.5 to 1; large text would do with 3, and has 4.5 here all the same. */
describe.each(storyNames)('%s', (story) => {
  const analysis = held(analyseStory(story));
  test.each([
    ['clinic', false],
    ['clinic', true],
    ['patient', false],
    ['patient', true],
  ] as const)('%s, grey %s: every word reads on what it lies on, in an ink of the palette', async (voice, grey) => {
    const bytes = await write(compose(analysis, wordsOf(), { voice, paper: 'a4' }), { grey });
    const words = operators(bytes).flatMap(contrasts);
    expect(words.length).toBeGreaterThan(50);
    expect(words.filter(({ ratio }) => ratio < 4.5)).toEqual([]);
    const known = inks(grey ? GREY : COLOUR);
    for (const { text } of words) expect(known).toContain(text.map((v) => v.toFixed(2)).join());
  });
});
