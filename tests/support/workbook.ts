import { strToU8, zipSync } from 'fflate';

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006/relationships';

/** A cell's XML without its place: see the makers below. */
export type CellXml = string;

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

export const text = (words: string): CellXml => ` t="inlineStr"><is><t>${escaped(words)}</t></is>`;
export const number = (value: number | string): CellXml => `><v>${value}</v>`;
/** Day number shown as date and time, as a day, or as a time of day (styles 1 to 3 below). */
export const stamp = (serial: number): CellXml => ` s="1"><v>${serial}</v>`;
export const day = (serial: number): CellXml => ` s="2"><v>${serial}</v>`;
export const clock = (part: number): CellXml => ` s="3"><v>${part}</v>`;
/** A formula with the value it had when the workbook was saved. */
export const formula = (written: string, stored: string): CellXml => `><f>${escaped(written)}</f><v>${stored}</v>`;
export const fault = (code: string): CellXml => ` t="e"><v>${code}</v>`;

/** Rows by their numbers, from 1; cells from column A, `null` = none. */
export type SheetRows = Record<number, (CellXml | null)[]>;

/** A small workbook by hand (ISO/IEC 29500: SpreadsheetML in an OPC package), one entry a sheet. */
export function workbookOf(
  sheets: Record<string, SheetRows>,
  more: { date1904?: boolean; merged?: string } = {},
): Uint8Array {
  const names = Object.keys(sheets);
  const files: Record<string, Uint8Array> = {
    '[Content_Types].xml': strToU8('<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>'),
    'xl/workbook.xml': strToU8(
      `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><workbookPr${more.date1904 ? ' date1904="1"' : ''}/><sheets>${names
        .map((name, i) => `<sheet name="${escaped(name)}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`)
        .join('')}</sheets></workbook>`,
    ),
    'xl/_rels/workbook.xml.rels': strToU8(
      `<Relationships xmlns="${PACKAGE}">${names
        .map(
          (_, i) => `<Relationship Id="rId${i + 1}" Type="${OFFICE}/worksheet" Target="worksheets/sheet${i + 1}.xml"/>`,
        )
        .join('')}</Relationships>`,
    ),
    'xl/styles.xml': strToU8(
      `<styleSheet xmlns="${MAIN}"><numFmts count="1"><numFmt numFmtId="164" formatCode="dd/mm/yyyy\\ hh:mm"/></numFmts><cellXfs count="4"><xf numFmtId="0"/><xf numFmtId="164"/><xf numFmtId="14"/><xf numFmtId="20"/></cellXfs></styleSheet>`,
    ),
  };
  names.forEach((name, i) => {
    const rows = Object.entries(sheets[name]!).map(([row, cells]) => {
      const xml = cells.map((cell, c) =>
        cell === null ? '' : `<c r="${String.fromCharCode(65 + c)}${row}"${cell}</c>`,
      );
      return `<row r="${row}">${xml.join('')}</row>`;
    });
    const merged = more.merged ? `<mergeCells count="1"><mergeCell ref="${more.merged}"/></mergeCells>` : '';
    files[`xl/worksheets/sheet${i + 1}.xml`] = strToU8(
      `<worksheet xmlns="${MAIN}"><sheetData>${rows.join('')}</sheetData>${merged}</worksheet>`,
    );
  });
  return zipSync(files);
}
