import { answerByHand } from './byHand.ts';
import { type Column, type Making, noteColumns, timeColumns } from './columns.ts';
import { isRecords, isSheet } from './shape.ts';
import type { Line, Sheet } from './table.ts';
import { KINDS, kindWord } from './words.ts';

const spec = ({ role, unit }: Column) => (unit && role !== 'sensor' && role !== 'value' ? { role, unit } : role);

/** One table of a layout: what a person who knows the file would write down. */
function tableLayout(
  columns: Column[],
  head: Line | undefined,
  lineOf: Map<Line, number>,
  first: Line | undefined,
  { shape, form }: Making,
): object {
  const cells = head?.cells ?? [];
  const named = columns
    .filter(({ role }) => role !== 'ignore')
    .map((column) => {
      const c = columns.indexOf(column);
      const shift = shape.defect === 'empty-column' && c > 0 && cells[1] === '' ? 1 : 0;
      const name = cells[c + shift] ?? '';
      const once = cells.filter((cell) => cell === name).length === 1;
      return [once ? name : `#${c + 1 + shift}`, spec(column)];
    });
  return {
    ...(isRecords(shape)
      ? {}
      : head
        ? { headerLine: lineOf.get(head)! }
        : { headerLine: 0, firstLine: lineOf.get(first!)! }),
    decimalMark: shape.number === 'comma' ? ',' : '.',
    unit: shape.unit,
    ...(form.order ? { dateOrder: form.order } : {}),
    columns: Object.fromEntries(named),
  };
}

/** The whole layout of a sheet; its second table, where there is one, is one of notes. */
function wholeLayout(sheet: Sheet, lineOf: Map<Line, number>, making: Making): object {
  const { shape } = making;
  const heads = sheet.lines.filter(({ is }) => is === 'head');
  const main = tableLayout(
    sheet.columns,
    heads[0],
    lineOf,
    sheet.lines.find(({ is }) => is === 'data'),
    making,
  );
  const delimiter = isSheet(shape) || isRecords(shape) ? {} : { delimiter: shape.delimiter };
  const turn = sheet.lines.find(
    ({ readings }) => shape.defect === 'unit-turns' && readings[0] && readings[0].unit !== shape.unit,
  );
  const later = turn && { ...main, headerLine: 0, firstLine: lineOf.get(turn)!, unit: turn.readings[0]!.unit };
  if (later && heads[0]) {
    // Under a table without names, columns are known by their places.
    const roles = sheet.columns.map((column, c) => [`#${c + 1}`, spec(column)]).filter(([, role]) => role !== 'ignore');
    return { ...delimiter, tables: [main, { ...later, columns: Object.fromEntries(roles) }] };
  }
  if (later) return { ...delimiter, tables: [main, later] };
  if (shape.notes !== 'second-table') return { ...delimiter, ...main };
  const notes = tableLayout([...timeColumns(making), ...noteColumns(making)], heads.at(-1), lineOf, undefined, making);
  return { ...delimiter, tables: [main, notes] };
}

const ROLE_OF_KIND: Record<(typeof KINDS)[number], string> = {
  sensor: 'sensor',
  fingerstick: 'fingerstick',
  rapid: 'insulin',
  long: 'insulin',
  meal: 'carbohydrate',
  exercise: 'exercise',
  note: 'note',
  medicine: 'medication',
};

/** What somebody who knows the file writes into a layout where the program asks about one field of it. */
export function layoutAnswer(sheet: Sheet, lineOf: Map<Line, number>, making: Making, field: string): object {
  const { shape } = making;
  const byHand = answerByHand(sheet, field);
  if (byHand) return byHand;
  if (field === 'unit' && shape.defect !== 'unit-turns') return { unit: shape.unit };
  if (field === 'decimalMark') return { decimalMark: shape.number === 'comma' ? ',' : '.' };
  if (field === 'delimiter') return { delimiter: shape.delimiter };
  if (field === 'serialDates') return { serialDates: 1900 };
  if (field === 'series') return { series: 'confirmed' };
  if (field === 'units') return { units: 'by-size' };
  // Where no column tells of kinds, what the columns are says it.
  if (field === 'kinds' && shape.notes.startsWith('kind-'))
    return {
      kinds: Object.fromEntries(
        KINDS.map((kind) => [kindWord(shape.vocabulary, shape.language, kind), ROLE_OF_KIND[kind]]),
      ),
    };
  const whole = wholeLayout(sheet, lineOf, making);
  if (field !== 'meanings') return whole;
  // Columns without names are known by their places.
  const head = sheet.lines.find(({ is }) => is === 'head')?.cells ?? sheet.columns.map((_, c) => `#${c + 1}`);
  const shift = (c: number) => (shape.defect === 'empty-column' && c > 0 && head[1] === '' ? 1 : 0);
  const named = sheet.columns.flatMap((column, c) => {
    const name = head[c + shift(c)];
    return name ? [[name, spec(column)] as const] : [];
  });
  return { meanings: Object.fromEntries(named) };
}
