import type { TableLayout } from '../../schemas/layout.ts';
import { settleGlucose } from '../glucose/sensorColumns.ts';
import type { Reading } from '../reading.ts';
import { bothHalves, mendHalves } from '../times/halfDay.ts';
import { applyOffsets, offsetsAgree } from '../times/offsets.ts';
import { planChoice, planTimes, readTimeCells } from '../times/timeColumn.ts';
import { settleWalls } from '../times/wall.ts';
import type { Column } from './header.ts';
import { cellText, type Records } from './records.ts';
import { remarkClock, remarkGlucose } from './remarks.ts';
import { kindColumn, resolveColumns } from './roles.ts';
import { delimiterInNumbers } from './rowFit.ts';
import { readRows } from './rows.ts';
import type { Table } from './tables.ts';

/** The columns and settings that would read the table again without any detection. Undefined after a refusal. */
export type Settled = Pick<TableLayout, 'dateOrder' | 'decimalMark' | 'clock' | 'serialDates'> & { columns: Column[] };

/** Reads one table: times, glucose, then row by row everything else. */
export function readTable(reading: Reading, table: Table, layout: TableLayout | undefined): Settled | undefined {
  const { records, book, choices, entries, settings } = reading;
  const lineOf = (k: number): number => records.line[table.from + k]!;
  const refuse = (): undefined => {
    for (let r = table.from; r < table.to; r++) entries.fate(r, 'set-aside');
    return undefined;
  };
  if (delimiterInNumbers(records, table, book)) return refuse();
  const kinds = kindColumn(records, table);
  const columns = resolveColumns(records, table, kinds);
  const whens = columns.filter((column) => ['time', 'date', 'clock'].includes(column.role)).slice(0, 4);
  const plan = planTimes(whens.map((column) => readTimeCells(records, table.from, table.to, column)));
  if (!plan) {
    const sample = whens[0] ? firstText(records, table, whens[0]) : '';
    if (sample === '') return { columns };
    book.add('times-unreadable', 'refusal', table.from < records.count ? lineOf(0) : 0, {
      actual: sample,
      question: { of: 'layout', field: 'columns' },
    });
    return refuse();
  }
  choices.push(planChoice(plan));
  const clockCells = plan.kind === 'two' ? plan.clock : plan.kind === 'days' ? plan.day : plan.cells;
  const halves = layout?.clock ? 'none' : mendHalves(clockCells, plan.kind === 'two' ? plan.day.date : clockCells.date);
  if (halves === 'untold') {
    book.add('clock-half-lost', 'refusal', lineOf(0), {
      actual: clockCells.column.name,
      expected: bothHalves(clockCells, lineOf),
      question: { of: 'layout', field: 'clock' },
    });
    return refuse();
  }
  if (halves === 'mended')
    choices.push({
      id: 'half-of-day',
      value: 'row-order',
      by: 'file',
      evidence: { is: 'named', name: clockCells.column.name },
    });
  const dateOrder = settings.dateOrder ?? layout?.dateOrder;
  const walls = settleWalls(
    plan,
    lineOf,
    {
      today: settings.today,
      ...(dateOrder ? { dateOrder } : {}),
      ...(layout?.serialDates ? { serialDates: layout.serialDates } : {}),
    },
    reading.hints.order,
    book,
    choices,
  );
  if (!walls) return refuse();
  if (clockCells.zone && !reading.zones.has(clockCells.zone)) reading.zones.set(clockCells.zone, lineOf(0));
  applyOffsets(reading, table, columns, walls.offset);
  if (!offsetsAgree(reading, walls.wall, walls.offset, lineOf)) return refuse();
  if (!walls.timed && columns.some(({ role }) => role === 'glucose' || role === 'sensor')) {
    book.add('no-time-of-day', 'refusal', lineOf(0), { actual: firstText(records, table, whens[0]!) });
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
      headerLine: table.header < 0 ? 0 : records.line[table.header]!,
    },
    layout,
    book,
    choices,
    lineOf,
  });
  if (!glucose) return refuse();
  if (walls.carried > 0)
    choices.push({
      id: 'date-carried',
      value: walls.carried,
      by: 'default',
      evidence: { is: 'named', name: whens[0]!.name },
    });

  remarkClock(clockCells, book);
  for (const entry of glucose) if (entry.is === 'reading') remarkGlucose(entry.cells, book);
  readRows(reading, { table, columns, kinds, plan, walls, glucose });
  const settledColumns = columns.map((column) => {
    const found = glucose.find((entry) => entry.cells.column.index === column.index);
    if (!found || kinds) return column;
    return { ...found.cells.column, role: found.is === 'reading' ? ('sensor' as const) : ('fingerstick' as const) };
  });
  choices.push({
    id: 'columns',
    value: settledColumns.filter(({ role }) => role !== 'ignore').map(({ name, role }) => ({ name, role })),
    by: layout?.columns ? 'user' : 'file',
  });
  const ignored = columns.filter((column) => column.role === 'ignore' && column.name !== '');
  if (ignored.length > 0 && !layout?.columns) {
    book.add('columns-ignored', 'note', table.header < 0 ? 0 : records.line[table.header]!, {
      actual: ignored.map((column) => column.name),
      count: ignored.length,
    });
  }
  const mark = choices.find((choice) => choice.id === 'decimal-mark')?.value;
  return {
    columns: settledColumns,
    ...(walls.order ? { dateOrder: walls.order } : {}),
    ...(mark ? { decimalMark: mark } : {}),
    // What only the user could tell.
    ...(layout?.clock ? { clock: layout.clock } : {}),
    ...(layout?.serialDates ? { serialDates: layout.serialDates } : {}),
  };
}

function firstText(records: Records, table: Table, column: Column): string {
  for (let r = table.from; r < table.to; r++) {
    const text = cellText(records, r, column.index);
    if (text !== '') return text;
  }
  return '';
}
