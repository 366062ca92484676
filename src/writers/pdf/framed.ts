import { type Flow, flow, type Strip, together } from './flow.ts';
import type { Setting } from './setting.ts';

/** Between the outline and what stands inside. */
const PADDING = 9;

/**
 * Strips inside an ink outline of 1 pt. The outline is drawn strip by strip, so that a frame that outgrows a sheet
 * still has its sides. `inner` is given the width left inside.
 */
export function framed(width: number, { scale, palette }: Setting, inner: (width: number) => Strip[]): Flow {
  const stroke = { colour: palette.ink.line, width: 1 };
  const [x0, x1] = [0.5, width - 0.5];
  const edge = (height: number, rule: 'top' | 'bottom' | null, draw: Strip['draw'] = () => {}): Strip => ({
    height,
    gap: 0,
    keep: rule !== 'bottom',
    draw(sheet, x, y) {
      const at = rule === 'top' ? y + 0.5 : y + height - 0.5;
      const [from, to] = [rule === 'top' ? at : y, rule === 'bottom' ? at : y + height];
      const outline = rule
        ? [[x + x0, rule === 'top' ? to : from, x + x0, at, x + x1, at, x + x1, rule === 'top' ? to : from]]
        : [
            [x + x0, from, x + x0, to],
            [x + x1, from, x + x1, to],
          ];
      sheet.asArtifact().lines(outline, stroke);
      draw(sheet, x, y);
    },
  });
  const body = inner(width - 2 * PADDING).map((strip, i) => {
    const gap = i === 0 ? 0 : strip.gap;
    return edge(strip.height + gap, null, (sheet, x, y) => strip.draw(sheet, x + PADDING, y + gap));
  });
  const strips = together([edge(PADDING - 1, 'top'), ...body, edge(PADDING - 1, 'bottom')]);
  return flow(strips, scale.rhythm, 1.2 * scale.rhythm);
}
