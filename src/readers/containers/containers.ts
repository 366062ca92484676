import { gunzip } from '../../bytes/pack.ts';
import type { Input, ReadFile } from '../../model/input.ts';
import { accountOf } from '../account.ts';
import { openBook } from '../book.ts';
import { MOST_LINES, tooLong } from '../bounds.ts';
import { BOUNDS, unzip } from './zip.ts';

const CODE = { damaged: 'archive-damaged', 'too-large': 'archive-too-large', locked: 'archive-locked' } as const;

/** The inputs inside an archive, or the account of why it could not be opened. An input that is none is itself. */
export function unpack(input: Input): { inputs: Input[] } | { failed: ReadFile } {
  const { bytes, name } = input;
  if (input.form === 'locked') return { failed: closed(input, 'workbook-locked') };
  if (bytes[0] === 0x1f && bytes[1] === 0x8b) {
    const content = gunzip(bytes, BOUNDS.one);
    if (!content.ok) return { failed: closed(input, CODE[content.why]) };
    return { inputs: [{ name: name.replace(/\.gz$/i, ''), bytes: content.bytes }] };
  }
  if (bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4) {
    const opened = unzip(bytes);
    if (!opened.ok) return { failed: closed(input, CODE[opened.why]) };
    if (opened.workbook) return { failed: closed(input, 'workbook') };
    if (opened.files.length === 0) return { failed: closed(input, 'file-empty') };
    return { inputs: opened.files.map((file) => ({ name: `${name}/${file.name}`, bytes: file.bytes })) };
  }
  return tooLong(bytes) ? { failed: tooLongFile(input) } : { inputs: [input] };
}

function closed(
  input: Input,
  code: (typeof CODE)[keyof typeof CODE] | 'workbook' | 'workbook-locked' | 'file-empty',
): ReadFile {
  const book = openBook(input.name);
  book.add(code, 'warning');
  return accountOf(input, 'archive', { book });
}

function tooLongFile(input: Input): ReadFile {
  const book = openBook(input.name);
  book.add('too-many-lines', 'refusal', 0, { expected: MOST_LINES });
  return accountOf(input, 'delimited', { book });
}
