import { CONTENT_HEIGHT, CONTENT_WIDTH } from '../../charts/frame.ts';
import type { Report } from '../../model/report.ts';
import { baseline, type Scale } from './scale.ts';
import type { Setting } from './setting.ts';
import type { Sheet } from './sheet.ts';
import { type Node, node } from './tree.ts';
import { cut, wrap } from './wrap.ts';

type Look = Pick<Setting, 'scale' | 'palette' | 'faces'>;

/** Height of the box that header, content and footer share: two usual lines above and two below. */
export const FRAME_HEIGHT = CONTENT_HEIGHT + 60;

/** Two lines of text, the rule, and air before the content. */
export const headerHeight = ({ standing }: Scale): number => 2 * standing.line + 11;
/** Air after the content, and the lines at the foot. */
const footerHeight = ({ standing, standingLines }: Scale): number => standingLines * standing.line + 5;
/** What larger standing lines leave for the content. */
export const contentHeight = (scale: Scale): number => FRAME_HEIGHT - headerHeight(scale) - footerHeight(scale);

/**
 * The lines every sheet carries, so that a lone sheet can be put back where it belongs. They are read aloud once, before all else:
 * whose paper it is, what it is and of which days; on later sheets (no `root`) they are decoration.
 */
export function drawStanding(
  report: Report,
  sheet: Sheet,
  x: number,
  y: number,
  page: number,
  pages: number,
  setting: Look,
  root?: Node,
): void {
  const { scale, palette } = setting;
  const { line } = scale.standing;
  const fill = (text: string): string => text.replaceAll('{page}', `${page}`).replaceAll('{pages}', `${pages}`);
  const ruleY = y + 2 * line + 3;
  const [who, what, days] = root ? readFirst(root, 3) : [];
  drawPair([fill(report.header.left), fill(report.header.right)], [who, what], sheet, x, ruleY - 3, 'above', setting);
  sheet
    .asArtifact('Pagination')
    .lines([[x, ruleY, x + CONTENT_WIDTH, ruleY]], { colour: palette.ink.line, width: 0.75 });
  const footer = y + FRAME_HEIGHT - scale.standingLines * line;
  drawPair([fill(report.footer.left), fill(report.footer.right)], [days], sheet, x, footer, 'below', setting);
}

/** So many paragraphs that are read before all else. */
function readFirst(root: Node, many: number): Node[] {
  const nodes = Array.from({ length: many }, () => node('P'));
  root.children.unshift(...nodes);
  return nodes;
}

/** A text at each side, each of a few lines; what is longer ends in an ellipsis. A text without an owner is decoration. */
function drawPair(
  given: readonly [left: string, right: string],
  owners: readonly (Node | undefined)[],
  sheet: Sheet,
  x: number,
  y: number,
  side: 'above' | 'below',
  { scale, palette, faces }: Look,
): void {
  const style = scale.standing;
  const face = faces.regular;
  const gutter = style.size * 2;
  const texts = given.map((text) => face.readable(text));
  const widths = texts.map((text) => face.width(text, style.size));
  const room = CONTENT_WIDTH - gutter;
  // The shorter text gets the room it needs, up to half; the other has the rest.
  const rightRoom = Math.min(widths[1]!, Math.max(room / 2, room - widths[0]!));
  const rooms = [room - rightRoom, rightRoom];
  texts.forEach((text, i) => {
    const lines = wrap(text, face, style.size, rooms[i]! + 0.01);
    const most = side === 'above' ? 2 : scale.standingLines;
    const shown = lines.slice(0, most);
    const owner = owners[i];
    if (lines.length > most) {
      shown[most - 1] = cut(lines.slice(most - 1).join(''), face, style.size, rooms[i]!);
      if (owner) owner.actual = text;
    }
    const top = side === 'above' ? y - shown.length * style.line : y;
    shown.forEach((line, n) => {
      const at = i === 0 ? x : x + CONTENT_WIDTH - face.width(line.trimEnd(), style.size);
      if (owner) sheet.as(owner);
      else sheet.asArtifact('Pagination');
      sheet.text(line, at, top + n * style.line + baseline(style), face, style.size, palette.axis.text);
    });
  });
}
