import type { NotePlace } from '../../model/input.ts';
import type { Kinds } from '../evidence/kinds.ts';
import type { Side } from '../evidence/sideClocks.ts';
import type { GlucoseColumn } from '../glucose/sensorColumns.ts';
import type { Reading } from '../reading.ts';
import type { TimePlan } from '../times/timeColumn.ts';
import type { Walls } from '../times/wall.ts';
import type { Column } from './header.ts';
import type { Table } from './tables.ts';

/** A table with everything about it settled. */
export interface SettledTable {
  table: Table;
  columns: Column[];
  kinds: Kinds | undefined;
  plan: TimePlan;
  walls: Walls;
  glucose: GlucoseColumn[];
  /** Tables to its right, each with a clock of its own. */
  sides: Side[];
  /** The column under which a row one cell short has lost a cell. */
  unnamed?: number | undefined;
}

/** What one row gave, and how often something was wrong with it. */
export interface Yield {
  entries: number;
  faults: number;
  /** It told of sitting still and of nothing else. */
  rest: boolean;
  /** It said 0 for an amount and nothing else. */
  zero: boolean;
  /** A layout says that its kind is none of ours. */
  left: boolean;
}

export function placeOf(
  reading: Reading,
  { table, walls }: Pick<SettledTable, 'table' | 'walls'>,
  k: number,
): NotePlace {
  const row = table.from + k;
  return {
    wall: walls.wall[k]!,
    offset: walls.offset[k]!,
    timed: walls.timed && walls.dateOnly[k] === 0,
    origin: { file: reading.file, line: reading.records.line[row]! },
    row,
  };
}
