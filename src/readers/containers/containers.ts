import { gunzip } from '../../bytes/pack.ts';
import type { Closed, Input, ReadFile } from '../../model/input.ts';
import { accountOf } from '../account.ts';
import { openBook } from '../book.ts';
import { MOST_LINES, tooLong } from '../bounds.ts';
import { BOUNDS, inside, isZip, unzip } from './zip.ts';

/** Why an archive could not be opened, as an input that was looked into says it. */
export const CLOSED = {
  damaged: 'archive-damaged',
  'too-large': 'archive-too-large',
  locked: 'archive-locked',
} as const;

/**
 * The inputs inside an archive, each with the account of why it is not read where it is not. An input that is none is itself; what was
 * opened before (workbook.ts) is not looked into again.
 */
export function unpack(input: Input): ({ input: Input } | { failed: ReadFile })[] {
  const unpacked = opened(input);
  if ('failed' in unpacked) return [unpacked];
  // What unpacks to too much is as long as what came so.
  return unpacked.inputs.map((one) => (tooLong(one.bytes) ? { failed: tooLongFile(one) } : { input: one }));
}

function opened(input: Input): { inputs: Input[] } | { failed: ReadFile } {
  const { bytes, name, form } = input;
  if (form === 'too-deep') return { inputs: [input] };
  if (form !== undefined && form !== 'sheet') return { failed: closed(input, form) };
  if (bytes[0] === 0x1f && bytes[1] === 0x8b) {
    const content = gunzip(bytes, BOUNDS.one);
    if (!content.ok) return { failed: closed(input, CLOSED[content.why]) };
    return { inputs: [{ name: name.replace(/\.gz$/i, ''), bytes: content.bytes }] };
  }
  if (isZip(bytes)) {
    const archive = unzip(bytes);
    if (!archive.ok) return { failed: closed(input, CLOSED[archive.why]) };
    if (archive.workbook) return { failed: closed(input, 'workbook') };
    if (archive.files.length === 0) return { failed: closed(input, 'file-empty') };
    return { inputs: inside(input, archive.files) };
  }
  return { inputs: [input] };
}

function closed(input: Input, code: Closed): ReadFile {
  const book = openBook(input.name);
  book.add(code, 'warning');
  return accountOf(input, 'archive', { book });
}

function tooLongFile(input: Input): ReadFile {
  const book = openBook(input.name);
  book.add('too-many-lines', 'refusal', 0, { expected: MOST_LINES });
  return accountOf(input, 'delimited', { book });
}
