import type { BlockOf } from '../../model/report.ts';
import { type Flow, flow, leading, type Strip } from './flow.ts';
import { lineStrips, type Setting, setText } from './setting.ts';
import type { Sheet } from './sheet.ts';
import { node } from './tree.ts';

const MM = 72 / 25.4;
/** Side of a tick box. */
const BOX = 5 * MM;
/** Between ruled lines for handwriting. */
const RULED = 9 * MM;

function tickBox(sheet: Sheet, x: number, y: number, { palette }: Setting): void {
  const square = { x: x + 0.5, y: y + 0.5, w: BOX - 1, h: BOX - 1, radius: 1.5 };
  sheet.asArtifact().stroke(square, { colour: palette.ink.line, width: 1 });
}

/** Boxes, each with its words to the right: one under another, or in line, as many in a row as the width holds. */
export function boxes(block: BlockOf<'boxes'>, width: number, setting: Setting): Flow {
  const { scale, palette, parent } = setting;
  const style = scale.body;
  const left = BOX + scale.rhythm * (block.inline ? 0.5 : 1);
  const between = scale.rhythm * 1.2;
  const top = node('L', parent, { numbering: 'None' });
  const items = block.items.map((item) => {
    const text = setText(item, style, width - left, setting);
    const wide = Math.max(0, ...text.lines.map((line) => text.face.width(line.trimEnd(), style.size)));
    const lines = lineStrips(text, node('LBody', node('LI', top)), palette.ink.text, left);
    return { lines, wide: left + wide };
  });
  const rows: { x: number; lines: Strip[] }[][] = [];
  let x = Infinity;
  for (const { lines, wide } of items) {
    if (!block.inline || x + wide > width) {
      rows.push([]);
      x = 0;
    }
    rows.at(-1)!.push({ x, lines });
    x += wide + between;
  }
  const drop = Math.max(0, (BOX - style.line) / 2);
  const strips: Strip[] = rows.map((row, i) => ({
    height: Math.max(BOX, drop + Math.max(...row.map(({ lines }) => lines.length)) * style.line),
    gap: i === 0 ? 0 : scale.rhythm * 0.7,
    keep: false,
    draw(sheet, at, y) {
      for (const item of row) {
        tickBox(sheet, at + item.x, y + Math.max(0, (style.line - BOX) / 2), setting);
        item.lines.forEach((line, n) => {
          line.draw(sheet, at + item.x, y + drop + n * style.line);
        });
      }
    },
  }));
  return flow(strips, 0.5 * scale.rhythm, scale.rhythm);
}

/** A label may take so much of its line: the rest is to write on. */
const MOST_LABEL = 0.5;
/** Between the foot of a label and the rule it stands on. */
const FOOT = 2;

/** A line to write on, from `left` on. */
const ruleOf = (left: number, width: number, { palette }: Setting): Strip => ({
  height: RULED,
  gap: 0,
  keep: false,
  draw(sheet, x, y) {
    const at = y + RULED - 0.5;
    sheet.asArtifact().lines([[x + left, at, x + width, at]], { colour: palette.muted.line, width: 0.75 });
  },
});

/** A label on the line it names; null where it would leave too little to write on. */
function onItsLine(label: string, width: number, setting: Setting): Flow | null {
  const { scale, palette, parent } = setting;
  const text = setText(label, scale.strong, width * MOST_LABEL, setting);
  if (text.lines.length > 1) return null;
  const [words] = lineStrips(text, node('P', parent), palette.ink.text);
  const rule = ruleOf(text.face.width(text.lines[0]!, text.style.size) + scale.rhythm, width, setting);
  const strip: Strip = {
    ...rule,
    draw(sheet, x, y) {
      words!.draw(sheet, x, y + RULED - text.style.line + FOOT);
      rule.draw(sheet, x, y);
    },
  };
  return flow([strip], 0.3 * scale.rhythm, 0.9 * scale.rhythm);
}

export function writeIn(block: BlockOf<'writeIn'>, width: number, setting: Setting): Flow {
  const { scale, palette, parent } = setting;
  const oneLine =
    block.inline && block.text === undefined && block.label !== undefined
      ? onItsLine(block.label, width, setting)
      : null;
  if (oneLine !== null) return oneLine;
  const label =
    block.label === undefined
      ? []
      : lineStrips(setText(block.label, scale.strong, width, setting), node('P', parent), palette.ink.text);
  const rule = ruleOf(0, width, setting);
  const typed =
    block.text === undefined
      ? []
      : lineStrips(setText(block.text, scale.body, width, setting), node('P', parent), palette.ink.text);
  const strips = [...leading(label), ...typed];
  for (let i = 0; i < block.lines; i++) strips.push(i === 0 && block.lines > 1 ? { ...rule, keep: true } : rule);
  return flow(strips, scale.rhythm, 1.2 * scale.rhythm);
}
