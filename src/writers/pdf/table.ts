import type { BlockOf, Cell } from '../../model/report.ts';
import { type Flow, flow, leading, type Strip } from './flow.ts';
import { drawMarks } from './marks.ts';
import { baseline, type Style } from './scale.ts';
import { lineStrips, type SetText, type Setting, setText } from './setting.ts';
import type { Sheet } from './sheet.ts';
import { swatch } from './swatch.ts';
import { type Column, isAcross, placeColumns, SWATCH_ROOM } from './tableColumns.ts';
import { type Node, node } from './tree.ts';

/** What the rows of one table share. */
interface Grid {
  columns: Column[];
  width: number;
  /** Above and below the text of a cell. */
  pad: number;
  /** Structure element of the table. */
  top: Node;
  setting: Setting;
}

interface SetCell {
  /** What stands before the text on lines of its own. */
  first?: SetText;
  text: SetText;
  owner: Node;
  colour: string;
  cell: Cell;
  column: Column;
}

export function table(block: BlockOf<'table'>, width: number, setting: Setting): Flow {
  const { scale, palette, parent, capacity } = setting;
  const dense = block.dense ?? false;
  const styles = dense ? { cell: scale.denseCell, head: scale.denseHead } : { cell: scale.cell, head: scale.cellHead };
  const pad = styles.cell.size * (dense ? 0.2 : 0.36);
  const columns = placeColumns(block, width, styles, setting);
  const top = node('Table', parent);
  const strips: Strip[] = [];
  if (block.captionShown) {
    const text = setText(block.caption, scale.strong, width, setting);
    strips.push(...leading(lineStrips(text, node('Caption', top), palette.ink.text)));
  } else top.summary = block.caption;

  const grid: Grid = { columns, width, pad, top, setting };
  const head = headStrip(block, styles.head, grid);
  strips.push({ ...head, gap: strips.length ? scale.rhythm * 0.4 : 0, keep: true });
  const room = capacity - head.height;
  block.rows.forEach((row, i) => {
    const parts = rowStrips(row, styles.cell, room, grid);
    // A first or a last row never stands alone on its sheet.
    const binds = i === 0 || i === block.rows.length - 2 || isAcross(block.rows[i + 1]);
    parts.forEach((part, n) => {
      const last = n === parts.length - 1;
      strips.push({ ...part, running: head, keep: last && binds && i < block.rows.length - 1 });
    });
  });
  return flow(strips, 0.8 * scale.rhythm, 1.3 * scale.rhythm);
}

/** The head stays an artifact where it is repeated: its cells are read once. */
function headStrip(block: BlockOf<'table'>, style: Style, { columns, width, pad, top, setting }: Grid): Strip {
  const row = node('TR', top);
  const cells = columns.map((column, i): SetCell => {
    const cell = { text: block.columns[i]!.title };
    const text = setText(cell.text, style, column.width, setting);
    const owner = node('TH', row, { scope: 'Column' });
    return { text, owner, colour: setting.palette.axis.text, cell, column };
  });
  const lines = Math.max(1, ...cells.map((it) => it.text.lines.length));
  const height = lines * style.line + pad * 2;
  let drawn = false;
  return {
    height,
    gap: 0,
    keep: true,
    draw(sheet, x, y) {
      const repeated = drawn;
      drawn = true;
      for (const it of cells) {
        // Titles stand on the rule, so that short ones are not left hanging.
        const drop = (lines - it.text.lines.length) * style.line;
        drawCell(it, 0, lines, sheet, x, y + pad + drop, repeated, setting);
      }
      const rule = [x, y + height, x + width, y + height];
      sheet.asArtifact().lines([rule], { colour: setting.palette.ink.line, width: 0.75 });
    },
  };
}

/** One strip a row; a row taller than a sheet is cut between lines. */
function rowStrips(
  row: readonly Cell[],
  style: Style,
  room: number,
  { columns, width, pad, top, setting }: Grid,
): Strip[] {
  const { palette, scale } = setting;
  const owner = node('TR', top);
  const whole: Column[] = [{ x: scale.rhythm, width: width - scale.rhythm, end: false }];
  const across = isAcross(row) ? columns.length : undefined;
  const cells = (across === undefined ? columns : whole).map((column, i): SetCell => {
    const cell = row[i] ?? { text: '' };
    const face = cell.strong ? 'semibold' : style.face;
    const text = setText(cell.text, { ...style, face }, column.width - (cell.band ? SWATCH_ROOM : 0), setting);
    // The first cell names its row, when it says anything; one that goes over the row is what the row says.
    const names = i === 0 && across === undefined && cell.text.trim() !== '';
    const spans = across === undefined ? {} : { span: across };
    const place = names ? node('TH', owner, { scope: 'Row' }) : node('TD', owner, spans);
    const set = { text, owner: place, colour: cell.muted ? palette.muted.text : palette.ink.text, cell, column };
    if (cell.first === undefined) return set;
    return { ...set, first: setText(cell.first, { ...style, face: 'semibold' }, column.width, setting) };
  });
  const textLines = ({ first, text, cell }: SetCell): number =>
    (first?.lines.length ?? 0) + (cell.text === '' && (cell.picture || first) ? 0 : text.lines.length);
  const needed = cells.map((it) => textLines(it) + Math.ceil((it.cell.picture?.height ?? 0) / style.line));
  const lines = Math.max(1, ...needed);
  const perStrip = Math.max(1, Math.floor((room - pad * 2) / style.line));
  const strips: Strip[] = [];
  for (let from = 0; from < lines; from += perStrip) {
    const to = Math.min(lines, from + perStrip);
    const height = (to - from) * style.line + pad * 2;
    strips.push({
      height,
      gap: 0,
      keep: false,
      draw(sheet, x, y) {
        for (const it of cells) {
          drawCell(it, from, to, sheet, x, y + pad, false, setting);
          if (from === 0) drawPicture(it, sheet, x, y + pad + textLines(it) * style.line, setting);
        }
        if (to < lines) return;
        const rule = [x, y + height, x + width, y + height];
        sheet.asArtifact().lines([rule], { colour: palette.grid.line, width: scale.rule });
      },
    });
  }
  return strips;
}

function drawPicture(
  { cell: { picture }, owner, column }: SetCell,
  sheet: Sheet,
  x: number,
  y: number,
  setting: Setting,
): void {
  if (!picture) return;
  const figure = node('Figure', owner, { alt: picture.summary });
  const left = x + column.x;
  figure.box = sheet.boxInFile(left, y, picture.width, picture.height);
  drawMarks(picture, sheet.as(figure), left, y, 1, setting);
}

function drawCell(
  { first: before, text, owner, colour, cell, column }: SetCell,
  from: number,
  to: number,
  sheet: Sheet,
  x: number,
  y: number,
  artifact: boolean,
  setting: Setting,
): void {
  const { style, face, lines, actual } = text;
  const strong = before?.lines ?? [];
  if (actual ?? before?.actual) owner.actual = [cell.first, cell.text].filter(Boolean).join(' ');
  const base = baseline(style);
  const shown = [...strong, ...lines].slice(from, to);
  const faceOf = (n: number): typeof face => (before && from + n < strong.length ? before.face : face);
  const wide = (line: string, n: number): number => faceOf(n).width(line.trimEnd(), style.size);
  let left = x + column.x;
  if (cell.band) {
    const first = shown[0] ?? '';
    if (from === 0) {
      const at = column.end ? left + column.width - wide(first, 0) - SWATCH_ROOM : left;
      swatch(sheet, cell.band, at, y + base, setting);
    }
    if (!column.end) left += SWATCH_ROOM;
  }
  shown.forEach((line, n) => {
    if (!line) return;
    const at = column.end ? left + column.width - wide(line, n) : left;
    if (artifact) sheet.asArtifact();
    else sheet.as(owner);
    sheet.text(line, at, y + base + n * style.line, faceOf(n), style.size, colour);
  });
}
