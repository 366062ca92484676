import { gzipSync, strToU8, zipSync } from 'fflate';
import type { Input } from '../../src/model/input.ts';
import { type CellXml, number, type SheetRows, stamp, text, workbookOf } from '../support/workbook.ts';
import { isOpenFormat } from './openRecords.ts';
import { recordsText } from './records.ts';
import { isRecords, type Shape } from './shape.ts';
import { oldWorkbook, openSheet, type SheetCell, type SheetOf } from './sheetFiles.ts';
import type { Line, Sheet } from './table.ts';

/** The files of a shape, and on which physical line each line of a sheet begins. */
export interface Rendered {
  inputs: Input[];
  lineOf: Map<Line, number>;
}

function delimited(sheet: Sheet, shape: Shape, lineOf: Map<Line, number>): string {
  const end = shape.lineEnd;
  let at = 1;
  let all = '';
  const { delimiter } = shape;
  sheet.lines.forEach((line, i) => {
    lineOf.set(line, at);
    const written =
      line.raw ??
      line.cells
        .map((cell) => {
          const must = cell.includes(delimiter) || /["\r\n]/.test(cell);
          const every = shape.quoting === 'all' && line.is !== 'free' && cell !== '';
          return must || every ? `"${cell.replaceAll('"', '""')}"` : cell;
        })
        .join(delimiter);
    const last = i === sheet.lines.length - 1 && shape.defect === 'no-last-line-end';
    all += written + (last ? '' : end);
    at += 1 + (written.match(/\n/g)?.length ?? 0);
  });
  return all;
}

function encoded(content: string, shape: Shape): Uint8Array {
  const wide = (swap: boolean, mark: boolean): Uint8Array => {
    const bytes = Buffer.from(`${mark ? '\ufeff' : ''}${content}`, 'utf16le');
    return new Uint8Array(swap ? bytes.swap16() : bytes);
  };
  if (shape.encoding === 'utf-8-mark') return strToU8(`\ufeff${content}`);
  if (shape.encoding === 'utf-16le') return wide(false, true);
  if (shape.encoding === 'utf-16be') return wide(true, true);
  if (shape.encoding === 'utf-16le-bare') return wide(false, false);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: exactly the letters that Latin-1 has
  if (shape.encoding === 'windows-1252' && /^[\x00-\x7f\xa0-\xff]*$/.test(content))
    return new Uint8Array(Buffer.from(content, 'latin1'));
  return strToU8(content);
}

function workbook(sheets: Sheet[], shape: Shape, lineOf: Map<Line, number>): Uint8Array {
  const book: Record<string, SheetRows> = {};
  for (const sheet of sheets) {
    const rows: SheetRows = {};
    const roles = sheet.columns.map(({ role }) => role);
    sheet.lines.forEach((line, i) => {
      lineOf.set(line, i + 1);
      rows[i + 1] = line.cells.map((cell, c): CellXml | null => {
        if (cell === '') return null;
        const numeric = /^-?\d+(\.\d+)?$/.test(cell);
        const when = shape.time === 'serial' && roles[c] === 'time';
        if (line.is === 'free' || line.is === 'head' || !numeric || /^0\d/.test(cell)) return text(cell);
        return when ? stamp(Number(cell)) : number(cell);
      });
    });
    book[sheet.name] = rows;
  }
  return workbookOf(book);
}

/** The cells of old workbooks and OpenDocument sheets; a row that holds nothing is one all the same. */
function sheetsFor(sheets: Sheet[], shape: Shape, lineOf: Map<Line, number>): SheetOf[] {
  return sheets.map(({ name, lines, columns }) => ({
    name,
    rows: lines.map((line, i) => {
      lineOf.set(line, i + 1);
      return line.cells.map((cell, c): SheetCell => {
        if (cell === '') return null;
        const numeric = /^-?\d+(\.\d+)?$/.test(cell) && !/^0\d/.test(cell);
        if (line.is === 'free' || line.is === 'head' || !numeric) return cell;
        return shape.time === 'serial' && columns[c]?.role === 'time' ? { serial: Number(cell) } : Number(cell);
      });
    }),
  }));
}

export function render(sheets: Sheet[], shape: Shape): Rendered {
  const lineOf = new Map<Line, number>();
  if (shape.container === 'old-workbook')
    return { inputs: [{ name: 'log.xls', bytes: oldWorkbook(sheetsFor(sheets, shape, lineOf)) }], lineOf };
  if (shape.container === 'open-sheet')
    return { inputs: [{ name: 'log.ods', bytes: openSheet(sheetsFor(sheets, shape, lineOf)) }], lineOf };
  if (isOpenFormat(shape)) {
    const [{ lines }] = sheets as [Sheet];
    lines.forEach((line, i) => {
      lineOf.set(line, i + 1);
    });
    return { inputs: [{ name: 'log.json', bytes: strToU8(`${lines.map(({ raw }) => raw).join('\n')}\n`) }], lineOf };
  }
  if (isRecords(shape))
    return {
      inputs: sheets.map((sheet) => ({
        name: `${sheet.name}.json`,
        bytes: strToU8(recordsText(sheet, shape, lineOf)),
      })),
      lineOf,
    };
  if (shape.container === 'workbook')
    return { inputs: [{ name: 'log.xlsx', bytes: workbook(sheets, shape, lineOf) }], lineOf };
  const inputs = sheets.map((sheet): Input => {
    const name = `${sheet.name}.csv`;
    const bytes = encoded(delimited(sheet, shape, lineOf), shape);
    if (shape.container === 'gzip') return { name: `${name}.gz`, bytes: gzipSync(bytes, { mtime: 0 }) };
    if (shape.container === 'zip')
      return { name: `${sheet.name}.zip`, bytes: zipSync({ [name]: bytes }, { mtime: '2026-01-01' }) };
    return { name, bytes };
  });
  return { inputs, lineOf };
}

/** `log` of `log.csv`, `log.zip/log.csv` and `log.xlsx/log`. */
export const sheetName = (file: string): string => file.replace(/^.*\//, '').replace(/\..*$/, '');
