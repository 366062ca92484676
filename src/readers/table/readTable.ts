import type { TableLayout } from '../../schemas/layout.ts';
import { type Claimed, claimColumns } from '../evidence/claim.ts';
import { findKinds } from '../evidence/kinds.ts';
import { columnLedger } from '../evidence/ledger.ts';
import { leaveNotedAmounts } from '../evidence/notedValues.ts';
import { askKinds, askUnheard } from '../evidence/questions.ts';
import { sideClocks } from '../evidence/sideClocks.ts';
import { unheardSensor } from '../evidence/unheard.ts';
import { tellUnreadAmounts } from '../evidence/unreadAmounts.ts';
import { addWearers } from '../evidence/wearers.ts';
import { settleGlucose } from '../glucose/sensorColumns.ts';
import type { Reading } from '../reading.ts';
import { dayAbove, keepDay } from '../times/dayAbove.ts';
import { applyOffsets, offsetsAgree } from '../times/offsets.ts';
import { settleWalls } from '../times/wall.ts';
import { daysOf } from '../times/yearDays.ts';
import type { Column } from './header.ts';
import { remarkClock, remarkGlucose } from './remarks.ts';
import { resolveColumns } from './roles.ts';
import { delimiterInNumbers } from './rowFit.ts';
import { readRows } from './rows.ts';
import { evenShortRows } from './shortRows.ts';
import type { Table } from './tables.ts';
import { firstText, tableTimes } from './tableTimes.ts';

/** Names of columns in one issue; the ledger of columns has all of them (ours). */
const MOST_NAMED = 100;

/** The columns and settings that would read the table again without any detection. Undefined after a refusal. */
export type Settled = Pick<
  TableLayout,
  'dateOrder' | 'decimalMark' | 'clock' | 'serialDates' | 'start' | 'year' | 'kinds'
> & {
  columns: Column[];
};

/** Reads one table: times, glucose, then row by row everything else. */
export function readTable(reading: Reading, found: Table, layout: TableLayout | undefined): Settled | undefined {
  const { table, unnamed } = evenShortRows(reading.records, found);
  const { records, book, choices, entries, settings } = reading;
  const lineOf = (k: number): number => records.line[table.from + k]!;
  let claimed: Claimed | undefined;
  const refuse = (): undefined => {
    if (claimed) reading.columns.push(...columnLedger(records, table, claimed.columns, claimed));
    for (let r = table.from; r < table.to; r++) entries.fate(r, 'set-aside');
    return undefined;
  };
  if (delimiterInNumbers(records, table, book)) return refuse();
  claimed = claimColumns(records, table, layout);
  for (const { name, index } of claimed.otherwise)
    book.add('place-is-named', 'warning', 0, { actual: name, expected: `#${index + 1}` });
  const times = tableTimes(reading, table, claimed, layout);
  if (times === 'none') {
    reading.columns.push(...columnLedger(records, table, claimed.columns, claimed));
    return { columns: claimed.columns };
  }
  if (!times) return refuse();
  const { plan, clock: clockCells } = times;
  const dateOrder = settings.dateOrder ?? layout?.dateOrder;
  const yearDays = reading.yearDays ?? reading.hints.yearDays;
  const walls = settleWalls(
    plan,
    lineOf,
    {
      today: settings.today,
      ...(dateOrder ? { dateOrder } : {}),
      ...(yearDays ? { yearDays } : {}),
      ...(layout?.serialDates ? { serialDates: layout.serialDates } : {}),
    },
    reading.hints.order,
    book,
    choices,
    plan.kind === 'two' ? dayAbove(reading, plan.clock, claimed.columns) : undefined,
  );
  if (!walls) return refuse();
  keepDay(reading, plan, walls, claimed.columns);
  if (walls.yearDays) reading.yearDays = daysOf(walls.wall);
  if (clockCells.zone && !reading.zones.has(clockCells.zone)) reading.zones.set(clockCells.zone, lineOf(0));
  const kindsFound = findKinds(records, table, claimed, walls.wall, layout);
  if (kindsFound.open) {
    askKinds(book, kindsFound.open, table.header < 0 ? lineOf(0) : records.line[table.header]!);
    return refuse();
  }
  const { kinds } = kindsFound;
  const columns = resolveColumns(records, { ...table, columns: claimed.columns }, kinds?.column);
  applyOffsets(reading, table, columns, walls.offset);
  if (!offsetsAgree(reading, walls, lineOf)) return refuse();
  if (!walls.timed && columns.some(({ role }) => role === 'glucose' || role === 'sensor')) {
    book.add('no-time-of-day', 'refusal', lineOf(0), { actual: firstText(records, table, clockCells.column) });
    return refuse();
  }
  const glucose = settleGlucose({
    records,
    table,
    columns,
    kinds,
    wall: walls.wall,
    unitWords: {
      laid: layout?.unit,
      asked: settings.unit,
      hinted: reading.hints.unit,
      above: reading.above.units,
      bySize: layout?.units === 'by-size',
      headerLine: table.header < 0 ? 0 : records.line[table.header]!,
    },
    layout,
    book,
    choices,
    lineOf,
    sensorElsewhere: reading.hints.sensor === true,
  });
  if (!glucose) return refuse();
  const unheard =
    glucose.length === 0 && !kinds && !reading.hints.sensor
      ? unheardSensor(records, table, { ...claimed, columns }, walls.wall)
      : undefined;
  if (unheard) {
    askUnheard(book, unheard, table.header < 0 ? lineOf(0) : records.line[table.header]!);
    return refuse();
  }
  if (walls.carried > 0)
    choices.push({
      id: 'date-carried',
      value: walls.carried,
      by: 'default',
      evidence: { is: 'named', name: clockCells.column.name },
    });

  remarkClock(clockCells, book);
  for (const { is, cells } of glucose) {
    if (is !== 'reading') continue;
    if (!kinds) leaveNotedAmounts(records, table, columns, cells, walls.wall);
    remarkGlucose(cells, book);
  }
  const sides = kinds ? [] : sideClocks(reading, table, columns, plan, walls, claimed);
  readRows(reading, { table, columns, kinds, plan, walls, glucose, sides, unnamed });
  addWearers(reading, table, columns, walls.fault);
  const settledColumns = columns.map((column) => {
    const found = glucose.find((entry) => entry.cells.column.index === column.index);
    if (sides.some(({ clock }) => clock === column))
      return { ...column, role: 'time' as const, seen: column.role !== 'time' };
    if (!found || kinds) return column;
    return {
      ...found.cells.column,
      ...(column.mixed ? { mixed: true } : {}),
      role: found.is === 'reading' ? ('sensor' as const) : ('fingerstick' as const),
    };
  });
  choices.push({
    id: 'columns',
    value: settledColumns.filter(({ role }) => role !== 'ignore').map(({ name, role }) => ({ name, role })),
    by: layout?.columns ? 'user' : 'file',
  });
  reading.columns.push(...columnLedger(records, table, settledColumns, claimed));
  if (!layout?.columns) tellUnreadAmounts(reading, table, columns, claimed);
  const ignored = settledColumns.filter((column) => column.role === 'ignore' && column.name !== '');
  if (ignored.length > 0 && !layout?.columns) {
    book.add('columns-ignored', 'note', table.header < 0 ? 0 : records.line[table.header]!, {
      actual: ignored.slice(0, MOST_NAMED).map((column) => column.name),
      count: ignored.length,
    });
  }
  const mark = choices.find((choice) => choice.id === 'decimal-mark')?.value;
  return {
    columns: settledColumns,
    ...(walls.order ? { dateOrder: walls.order } : {}),
    ...(mark ? { decimalMark: mark } : {}),
    ...(kinds && Object.keys(kinds.learnt).length > 0 ? { kinds: kinds.learnt } : {}),
    // What only the user could tell.
    ...(layout?.clock ? { clock: layout.clock } : {}),
    ...(layout?.serialDates ? { serialDates: layout.serialDates } : {}),
    ...(settings.layout?.start ? { start: settings.layout.start } : {}),
    ...(settings.layout?.year ? { year: settings.layout.year } : {}),
  };
}
