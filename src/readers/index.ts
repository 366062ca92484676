import type { Input, ReadFile, ReadSettings } from '../model/input.ts';
import type { OrderHint } from './column-order.ts';
import { unpack } from './containers.ts';
import type { DateOrder } from './day-order.ts';
import { readDelimited, recogniseDelimited } from './delimited.ts';
import { readFhir, recogniseFhir } from './fhir.ts';
import { readJsonRecords, recogniseJson } from './json-records.ts';
import { readOpenMhealth, recogniseOpenMhealth } from './open-mhealth.ts';
import { readSheet } from './sheet.ts';
import { readWide, recogniseWide } from './wide-table.ts';

/** One input kind. Readers never throw and never drop a record. */
export interface Reader {
  id: string;
  /** How sure it is, 0 to 1, from the first bytes and the name. */
  recognise(head: Uint8Array, name: string): number;
  /** `hint` is the date order that the person's other files settled on; only where this one cannot tell. */
  read(input: Input, settings: ReadSettings, hint?: OrderHint): ReadFile;
}

/** Sheets are known before they are read: the door opens workbooks (workbook.ts). */
const workbook: Reader = { id: 'workbook', recognise: () => 0, read: readSheet };

/** Every input kind; the surest one reads, the last of all is the fallback. */
export const readers: Reader[] = [
  { id: 'fhir', recognise: recogniseFhir, read: readFhir },
  { id: 'open-mhealth', recognise: recogniseOpenMhealth, read: readOpenMhealth },
  { id: 'json-records', recognise: recogniseJson, read: readJsonRecords },
  workbook,
  { id: 'wide-table', recognise: recogniseWide, read: readWide },
  { id: 'delimited', recognise: recogniseDelimited, read: readDelimited },
];

const HEAD = 65_536;

function readerOf(input: Input): Reader {
  if (input.form === 'sheet') return workbook;
  const head = input.bytes.subarray(0, HEAD);
  let best = readers[readers.length - 1]!;
  let sure = 0;
  for (const reader of readers) {
    const how = reader.recognise(head, input.name);
    if (how > sure) {
      best = reader;
      sure = how;
    }
  }
  return best;
}

/** Reads one input, or the first file of an archive. Total: any bytes give a ReadFile. */
export function readInput(input: Input, settings: ReadSettings, hint?: OrderHint): ReadFile {
  const unpacked = unpack(input);
  if ('failed' in unpacked) return unpacked.failed;
  const only = unpacked.inputs[0] ?? input;
  return readerOf(only).read(only, settings, hint);
}

/**
 * Reads a person's files, those inside archives too. Where one cannot tell the order of day and month, the order on
 * which all the others that could tell agree is taken, and the choice says so.
 */
export function readInputs(inputs: Input[], settings: ReadSettings): ReadFile[] {
  const read: { file: ReadFile; input?: Input }[] = [];
  for (const input of inputs) {
    const unpacked = unpack(input);
    if ('failed' in unpacked) read.push({ file: unpacked.failed });
    else for (const inner of unpacked.inputs) read.push({ file: readerOf(inner).read(inner, settings), input: inner });
  }
  const hint = commonOrder(read.map(({ file }) => file));
  return read.map(({ file, input }) => {
    const unclear = input && hint && file.issues.some(({ code }) => code === 'date-order-unclear');
    return unclear ? readerOf(input).read(input, settings, hint) : file;
  });
}

/** The date order all files agree on that could tell it from their own dates. */
function commonOrder(files: ReadFile[]): OrderHint | undefined {
  let hint: OrderHint | undefined;
  for (const file of files) {
    for (const { id, by, value } of file.choices) {
      if (id !== 'date-order' || by !== 'file') continue;
      if (hint && hint.order !== value) return undefined;
      hint ??= { order: value as DateOrder, evidence: file.name };
    }
  }
  return hint;
}
