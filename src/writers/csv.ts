/**
 * Spreadsheets run a cell that begins like this, some of them in full width too; a leading apostrophe keeps it text
 * (OWASP, CSV Injection). Where a semicolon or a tab parts columns, a cell of ours may be cut at one; its quotes then
 * stand within a cell and hold nothing together, so that a line end in it begins a row.
 */
const FORMULA = /^[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/;
const CUT_OPEN = /([;\t\r\n]"?)(?=[=+\-@\uff1d\uff0b\uff0d\uff20])(?![+-]?\d+(?:[.,]\d+)?(?:[;\t\r\n]|$))/g;
const PLAIN_NUMBER = /^-?\d+(\.\d+)?$/;

/**
 * Controls, and signs that turn the direction of writing: at a terminal or in an editor they would do their work. They are told by
 * number (`\u202e`), so that nothing of a row is lost.
 */
const STEERING = /(?![\t\r\n])[\p{Cc}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;
const byNumber = (sign: string): string => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`;

/** Rows as delimited text (RFC 4180, CRLF). Text that a spreadsheet would take for a formula is kept from running. */
export function csvText(rows: readonly (readonly (string | number)[])[]): string {
  return rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

function cell(value: string | number): string {
  let text = String(value).replace(STEERING, byNumber).replace(CUT_OPEN, "$1'");
  if (FORMULA.test(text) && !PLAIN_NUMBER.test(text)) text = `'${text}`;
  return /[",\r\n']/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
