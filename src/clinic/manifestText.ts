import type { Person } from '../model/clinic.ts';
import { manifestRow } from '../schemas/manifestRow.ts';
import { csvText } from '../writers/csv.ts';

/** What a spreadsheet would run, or a line of ours would change. */
const UNWRITABLE = /^[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]|[;\t\r\n\\]/;

export interface WrittenManifest {
  text: string;
  lines: number;
  /** Codes of people that no line can name. */
  leftOut: string[];
}

/**
 * A manifest that says what was found, for someone to fill in. Where it is asked whether files are one person's, the code is
 * left empty: the question stays until it is answered.
 */
export function manifestText(people: readonly Person[]): WrittenManifest {
  const columns = Object.keys(manifestRow.shape) as (keyof typeof manifestRow.shape)[];
  const named = people.filter(({ files }) => files.length > 0);
  const written = named.filter(({ at = '', code }) => !UNWRITABLE.test(at) && !UNWRITABLE.test(code));
  const rows = written.map(({ at = '', code, by }) => {
    const cells = { person: at, code: by === 'asked' ? '' : code };
    return columns.map((column) => (column === 'person' || column === 'code' ? cells[column] : ''));
  });
  return {
    text: csvText([columns, ...rows]),
    lines: rows.length,
    leftOut: named.filter((person) => !written.includes(person)).map(({ code }) => code),
  };
}
