/** Spreadsheets run a cell that begins like this; a leading apostrophe keeps it text. */
const FORMULA = /^[=+\-@\t\r]/;
const PLAIN_NUMBER = /^-?\d+(\.\d+)?$/;

/** Rows as delimited text (RFC 4180, CRLF). Text that a spreadsheet would take for a formula is kept from running. */
export function csvText(rows: readonly (readonly (string | number)[])[]): string {
  return rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

function cell(value: string | number): string {
  let text = String(value);
  if (FORMULA.test(text) && !PLAIN_NUMBER.test(text)) text = `'${text}`;
  return /[",\r\n']/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
