import { utils, write } from '@e965/xlsx';
import { strToU8, zipSync } from 'fflate';

/** A cell of a sheet: a text, a number, or a spreadsheet's day number that is shown as a time. */
export type SheetCell = string | number | { serial: number } | null;
export type SheetOf = { name: string; rows: SheetCell[][] };

const DAY = 86_400_000;
const dateOf = (serial: number): Date => new Date(Math.round((serial - 25_569) * DAY));

/** An old workbook (MS-XLS), written by the library that also reads it; files of another library stand in `tests/data/sheets`. */
export function oldWorkbook(sheets: SheetOf[]): Uint8Array {
  const book = utils.book_new();
  for (const { name, rows } of sheets) {
    const sheet = utils.aoa_to_sheet(
      rows.map((row) =>
        row.map((cell) =>
          cell !== null && typeof cell === 'object' ? { t: 'n', v: cell.serial, z: 'dd/mm/yyyy hh:mm:ss' } : cell,
        ),
      ),
    );
    utils.book_append_sheet(book, sheet, name);
  }
  return new Uint8Array(write(book, { bookType: 'biff8', type: 'buffer' }));
}

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;').replaceAll('\n', '</text:p><text:p>');

/** An OpenDocument sheet by hand (ISO/IEC 26300-1, 9.1: tables; empty cells repeated). */
export function openSheet(sheets: SheetOf[]): Uint8Array {
  const cellXml = (cell: SheetCell): string => {
    if (cell === null) return '<table:table-cell/>';
    if (typeof cell === 'number')
      return `<table:table-cell office:value-type="float" office:value="${cell}"><text:p>${cell}</text:p></table:table-cell>`;
    if (typeof cell === 'object') {
      const iso = dateOf(cell.serial).toISOString().slice(0, 19);
      return `<table:table-cell office:value-type="date" office:date-value="${iso}"><text:p>${iso}</text:p></table:table-cell>`;
    }
    return `<table:table-cell office:value-type="string"><text:p>${escaped(cell)}</text:p></table:table-cell>`;
  };
  const tables = sheets.map(
    ({ name, rows }) =>
      `<table:table table:name="${escaped(name)}">${rows
        .map(
          (row) =>
            `<table:table-row>${row.map(cellXml).join('')}<table:table-cell table:number-columns-repeated="200"/></table:table-row>`,
        )
        .join(
          '',
        )}<table:table-row table:number-rows-repeated="1000"><table:table-cell table:number-columns-repeated="200"/></table:table-row></table:table>`,
  );
  const names = 'urn:oasis:names:tc:opendocument:xmlns';
  const content = `<?xml version="1.0" encoding="UTF-8"?><office:document-content xmlns:office="${names}:office:1.0" xmlns:table="${names}:table:1.0" xmlns:text="${names}:text:1.0" office:version="1.3"><office:body><office:spreadsheet>${tables.join('')}</office:spreadsheet></office:body></office:document-content>`;
  const styles = `<?xml version="1.0" encoding="UTF-8"?><office:document-styles xmlns:office="${names}:office:1.0" office:version="1.3"/>`;
  const type = 'application/vnd.oasis.opendocument.spreadsheet';
  const manifest = `<?xml version="1.0" encoding="UTF-8"?><manifest:manifest xmlns:manifest="${names}:manifest:1.0" manifest:version="1.3"><manifest:file-entry manifest:full-path="/" manifest:media-type="${type}"/><manifest:file-entry manifest:full-path="content.xml" manifest:media-type="text/xml"/></manifest:manifest>`;
  return zipSync(
    {
      mimetype: [strToU8(type), { level: 0 }],
      'content.xml': strToU8(content),
      'styles.xml': strToU8(styles),
      'META-INF/manifest.xml': strToU8(manifest),
    },
    { mtime: '2026-01-01' },
  );
}
