import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { compose } from '../compose.ts';
import { analyse, words as wordsOf } from '../index.ts';
import type { Drawing } from '../model/drawing.ts';
import type { Block, Report } from '../model/report.ts';
import { GUIDES, type Guide, type GuidePicture } from '../page/guide.ts';
import { drawingSvg } from '../writers/svg.ts';

/** The pictures of a guide, out of the paper it is about, made of the invented fortnight that the page brings along. */
export function guidePictures(home: string): (guide: Guide, language: 'en' | 'es') => Promise<GuidePicture[]> {
  const read = (path: string): Buffer => readFileSync(join(home, path));
  const files = ['readings.csv', 'logbook.csv'];
  const inputs = files.map((name) => ({ name, bytes: read(`sample-data/steady-fortnight/${name}`) }));
  const analysis = analyse(inputs, { targets: 'adult', today: '2026-01-27', person: {}, period: { days: 14 } });
  if (!analysis.ok) throw new Error('The invented fortnight cannot be read.');
  return async (guide, language) => {
    const words = await wordsOf(language);
    const drawings = drawingsOf(compose(analysis, words, { voice: guide, paper: 'a4' }));
    return GUIDES[guide].flatMap(({ pictures = [] }) =>
      pictures.map((how) => {
        const drawing = drawings.find((one) => one.how === how);
        if (!drawing) throw new Error(`No picture of the invented fortnight is read as ${how}.`);
        const { charts } = words as unknown as { charts: { howTo: Record<string, string> } };
        return { how, shows: drawing.summary, read: charts.howTo[how]!, svg: drawingSvg(drawing, { id: how }) };
      }),
    );
  };
}

/** Every drawing of a report, each block in its fullest form. */
function drawingsOf({ pages }: Report): Drawing[] {
  const inside = (block: Block): Drawing[] => {
    switch (block.kind) {
      case 'chart':
        return [block.drawing];
      case 'columns':
        return block.columns.flat().flatMap(inside);
      case 'panel':
      case 'together':
        return block.blocks.flatMap(inside);
      case 'fit':
        return block.forms[0]!().flatMap(inside);
      default:
        return [];
    }
  };
  return pages.flatMap(({ blocks }) => blocks.flatMap(inside));
}
