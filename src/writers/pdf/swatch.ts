import type { Band } from '../../model/targets.ts';
import { hatchedFill } from './marks.ts';
import type { Setting } from './setting.ts';
import type { Sheet } from './sheet.ts';

/** Side of the small sample of a band beside its name, points. */
export const SWATCH = 7;

/** Draws a band's sample standing on a baseline. */
export function swatch(sheet: Sheet, band: Band, x: number, base: number, { palette }: Setting): void {
  const [left, top, side] = [x + 0.5, base - SWATCH + 0.25, SWATCH - 0.5];
  sheet.asArtifact();
  const path = { x: left, y: top, w: side, h: side };
  hatchedFill(sheet, palette[band], path, path, 'middle');
  sheet.stroke(path, { colour: palette.ink.line, width: 0.75 });
}
