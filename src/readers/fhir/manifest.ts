import { latin1 } from '../../bytes/text.ts';
import type { Input, Issue, ReadFile } from '../../model/input.ts';
import type { IssueBook } from '../book.ts';
import type { JsonText } from '../json/elements.ts';
import { listIn, numberIn, textIn } from '../json/fields.ts';
import { openJson } from '../json/jsonText.ts';

/** The list of files of a bulk export (HL7 Bulk Data Access): what should be there, and what went wrong on the way. */
export interface Manifest {
  outputs: { file: string; count: number | undefined }[];
  errors: number;
  /** Files that name records taken back. */
  deleted: string[];
}

export function isManifest(text: string): boolean {
  return /"transactionTime"\s*:/.test(text) && /"output"\s*:/.test(text);
}

export function manifestIn(text: JsonText): Manifest | undefined {
  const whole = text.outer;
  if (!whole || textIn(whole, 'transactionTime') === '' || !Array.isArray(whole.output)) return undefined;
  return {
    outputs: whole.output.map((output: unknown) => ({
      file: fileOf(output),
      count: numberIn(output, 'count'),
    })),
    // Called `outcome` in a later version.
    errors: listIn(whole, 'error').length + listIn(whole, 'outcome').length,
    deleted: listIn(whole, 'deleted').map(fileOf),
  };
}

/** The manifest that an input is; undefined for any other. */
export function manifestOf({ bytes }: Input): Manifest | undefined {
  if (bytes.length > 1_000_000 || !isManifest(latin1(bytes))) return undefined;
  const opened = openJson(bytes);
  return 'brokenAt' in opened ? undefined : manifestIn(opened);
}

const fileOf = (output: unknown): string =>
  textIn(output, 'url')
    .replace(/[?#].*$/, '')
    .replace(/^.*\//, '');

export function tellManifest({ errors }: Manifest, book: IssueBook): void {
  if (errors > 0) book.add('export-errors', 'warning', 0, { count: errors });
}

const plainName = (name: string): string => name.replace(/^.*\//, '').replace(/\.gz$/i, '');

/** Compares what a manifest promises with the files that came: those missing, and those with another number of rows. */
export function checkManifest({ outputs, deleted }: Manifest, name: string, files: ReadFile[]): Issue[] {
  const issues: Issue[] = [];
  const level = 'warning';
  const origin = { file: name, line: 0 };
  const cameAs = (file: string) => files.filter((other) => plainName(other.name) === plainName(file));
  // What was taken back cannot be left out without the list of it.
  for (const file of deleted)
    if (cameAs(file).length === 0) issues.push({ code: 'export-file-missing', level, origin, actual: file });
  for (const { file, count } of outputs) {
    const came = cameAs(file);
    const rows = came.reduce((sum, { fates }) => sum + fates.length, 0);
    if (came.length === 0)
      issues.push({
        code: 'export-file-missing',
        level,
        origin,
        actual: file,
        ...(count === undefined ? {} : { expected: count }),
      });
    else if (count !== undefined && rows !== count)
      issues.push({ code: 'export-count', level, origin, actual: { is: 'file-rows', file, rows }, expected: count });
  }
  return issues;
}
