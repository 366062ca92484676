import type { Band } from '../../model/targets.ts';
import { drawingSvg } from '../svg.ts';
import { drawn, type Html } from './element.ts';
import type { Setting } from './setting.ts';

const SIDE = 10;

/** A small sample of a band beside its name, for the eye only: the name is there in words. */
export function swatch(band: Band, { grey, id }: Setting): Html {
  const square = { x: 0.5, y: 0.5, w: SIDE - 1, h: SIDE - 1 };
  const svg = drawingSvg(
    {
      width: SIDE,
      height: SIDE,
      summary: '',
      marks: [{ kind: 'rect', role: band, ...square, outline: 'ink', outlineWidth: 0.75 }],
    },
    { grey, id: id('swatch') },
  );
  return drawn(forTheEye(svg, 'swatch'));
}

/** A drawing that says nothing new: no name, passed over by screen readers. */
export const forTheEye = (svg: string, name: string): string =>
  svg
    .replace(/ role="img" aria-labelledby="[^"]*"/, ` class="${name}" aria-hidden="true"`)
    .replace(/<title [^>]*>[^<]*<\/title>\n?/, '');
