import type { Input, Issue, ReadFile } from '../model/input.ts';
import type { IssueBook } from './book.ts';
import { type JsonText, listIn, numberIn, objectIn, openJson, textIn } from './json.ts';

/** The list of files of a bulk export (HL7 Bulk Data Access): what should be there, and what went wrong on the way. */
export interface Manifest {
  outputs: { file: string; count: number | undefined }[];
  errors: number;
  deleted: number;
}

export function isManifest(text: string): boolean {
  return /"transactionTime"\s*:/.test(text) && /"output"\s*:/.test(text);
}

export function manifestIn(text: JsonText): Manifest | undefined {
  const whole = text.form === 'object' ? objectIn(text.elements[0]?.value) : undefined;
  if (!whole || textIn(whole, 'transactionTime') === '' || !Array.isArray(whole.output)) return undefined;
  return {
    outputs: whole.output.map((output: unknown) => ({
      file: textIn(output, 'url')
        .replace(/[?#].*$/, '')
        .replace(/^.*\//, ''),
      count: numberIn(output, 'count'),
    })),
    // Called `outcome` in a later version.
    errors: listIn(whole, 'error').length + listIn(whole, 'outcome').length,
    deleted: listIn(whole, 'deleted').length,
  };
}

/** The manifest that an input is; undefined for any other. */
export function manifestOf({ bytes }: Input): Manifest | undefined {
  if (bytes.length > 1_000_000 || !isManifest(Buffer.from(bytes).toString('latin1'))) return undefined;
  const opened = openJson(bytes);
  return 'brokenAt' in opened ? undefined : manifestIn(opened);
}

export function tellManifest({ errors, deleted }: Manifest, book: IssueBook): void {
  if (errors > 0) book.add('export-errors', 'warning', 0, { count: errors });
  if (deleted > 0) book.add('export-deletions', 'warning', 0, { count: deleted });
}

const plainName = (name: string): string => name.replace(/^.*\//, '').replace(/\.gz$/i, '');

/** Compares what a manifest promises with the files that came: those missing, and those with another number of rows. */
export function checkManifest({ outputs }: Manifest, name: string, files: ReadFile[]): Issue[] {
  const issues: Issue[] = [];
  const add = (code: string, actual: string, expected: string): void => {
    issues.push({ code, level: 'warning', origin: { file: name, line: 0 }, actual, expected });
  };
  for (const { file, count } of outputs) {
    const came = files.filter((other) => plainName(other.name) === plainName(file));
    const rows = came.reduce((sum, { fates }) => sum + fates.length, 0);
    if (came.length === 0) add('export-file-missing', file, count === undefined ? '' : String(count));
    else if (count !== undefined && rows !== count) add('export-count', `${file}: ${rows}`, String(count));
  }
  return issues;
}
