import type { BlockOf, Cell } from '../../model/report.ts';
import { fairWidths } from './fairWidths.ts';
import type { Style } from './scale.ts';
import type { Setting } from './setting.ts';
import { SWATCH } from './swatch.ts';
import { widestPiece } from './wrap.ts';

/** Where a column of a table stands, in points from its left edge. */
export interface Column {
  x: number;
  width: number;
  end: boolean;
}

/** A swatch and the room behind it. */
export const SWATCH_ROOM = SWATCH + 4.5;

/** The widths that were asked for, save where a word or a number with its unit would have to be broken. */
export function placeColumns(
  block: BlockOf<'table'>,
  width: number,
  styles: { cell: Style; head: Style },
  setting: Setting,
): Column[] {
  const { size } = styles.cell;
  const gutter = size * (block.dense ? 0.9 : 1.4);
  const sum = block.columns.reduce((total, column) => total + column.width, 0) || 1;
  const last = block.columns.length - 1;
  const wished = block.columns.map((column) => (width * column.width) / sum);
  const needs = block.columns.map(({ title }, i) => {
    let widest = widestIn(title, styles.head, setting);
    for (const row of block.rows) {
      const cell = row[i];
      if (!cell || cell.across) continue;
      const face = cell.strong ? 'semibold' : styles.cell.face;
      const room = cell.band ? SWATCH_ROOM : 0;
      widest = Math.max(
        widest,
        cell.picture?.width ?? 0,
        cell.first === undefined ? 0 : widestIn(cell.first, { ...styles.cell, face: 'semibold' }, setting),
        room + widestIn(cell.text, { ...styles.cell, face }, setting),
      );
    }
    // Half of the table for one endless word would be too much.
    return Math.min(widest + 0.1 + (i === last ? 0 : gutter), Math.max(wished[i]!, width * 0.4));
  });
  const widths = fairWidths(wished, needs);
  let x = 0;
  return block.columns.map((column, i) => {
    const full = widths[i]!;
    const placed = { x, width: Math.max(size, full - (i === last ? 0 : gutter)), end: column.align === 'end' };
    x += full;
    return placed;
  });
}

/** Whether a row is one cell over the whole width. */
export const isAcross = (row: readonly Cell[] | undefined): boolean => row?.[0]?.across ?? false;

const widestIn = (text: string, { face, size }: Style, { faces }: Setting): number =>
  widestPiece(faces[face].readable(text), faces[face], size);
