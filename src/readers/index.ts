import type { Input, ReadFile, ReadSettings } from '../model/input.ts';
import { askOnward } from './askOnward.ts';
import { unpack } from './containers/containers.ts';
import { readSheet } from './containers/sheet.ts';
import { foldQuestions } from './evidence/foldQuestions.ts';
import { lookAtSeries } from './evidence/lookAtSeries.ts';
import { companionsOf } from './fhir/companions.ts';
import { readFhir, recogniseFhir } from './fhir/fhir.ts';
import { checkManifest, manifestOf } from './fhir/manifest.ts';
import { agreed, type Hints, isOpen, tellZone } from './hints.ts';
import { readJsonRecords, recogniseJson } from './json/jsonRecords.ts';
import { proposeOneLayout } from './oneLayout.ts';
import { readOpenMhealth, recogniseOpenMhealth } from './openMhealth/openMhealth.ts';
import { type CheckedSettings, checkSettings } from './reading.ts';
import { readDelimited, recogniseDelimited } from './table/delimited.ts';
import { readWide, recogniseWide } from './table/wideTable.ts';
import { tellWorldTime } from './times/worldTime.ts';

/** One input kind. Readers never throw and never drop a record. */
export interface Reader {
  id: string;
  /** How sure it is, 0 to 1, from the first bytes and the name. */
  recognise(head: Uint8Array, name: string): number;
  /** `hints` are what the person's other files tell; used only where this one cannot tell by itself. */
  read(input: Input, settings: CheckedSettings, hints?: Hints): ReadFile;
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

const HEAD = 16_384;

function readerOf(input: Input): Reader {
  if (input.form === 'sheet') return workbook;
  const head = input.bytes.subarray(0, HEAD);
  // Whoever reads what nobody else knows need not be asked.
  let best = readers[readers.length - 1]!;
  let sure = 0;
  for (const reader of readers.slice(0, -1)) {
    const how = reader.recognise(head, input.name);
    if (how > sure) {
      best = reader;
      sure = how;
    }
  }
  return best;
}

/**
 * Reads a person's files, those inside archives too. What one cannot tell by itself (order of day and month, unit) is
 * taken from the others where all that could tell agree, and the choice says so.
 */
export function readInputs(inputs: Input[], given: ReadSettings): ReadFile[] {
  const settings = checkSettings(given);
  const opened: ({ failed: ReadFile } | { input: Input; reader: Reader })[] = [];
  for (const input of inputs) {
    for (const one of unpack(input))
      opened.push('failed' in one ? one : { input: one.input, reader: readerOf(one.input) });
  }
  const shared: Hints = companionsOf(opened.flatMap((one) => ('input' in one && isFhir(one) ? [one.input] : [])));
  const read = opened.map((one) => ('failed' in one ? one.failed : one.reader.read(one.input, settings, shared)));
  const hints = { ...shared, ...agreed(read) };
  const files = read.map((file, i) => {
    const one = opened[i]!;
    return 'input' in one && isOpen(file, hints) ? one.reader.read(one.input, settings, hints) : file;
  });
  files.forEach((file, i) => {
    const one = opened[i]!;
    if ('input' in one) askOnward(file, settings, (supposed) => one.reader.read(one.input, supposed, hints));
  });
  tellZone(files, settings);
  tellWorldTime(files, settings);
  for (const file of files) lookAtSeries(file, settings.layout?.series === 'confirmed');
  proposeOneLayout(files, settings.layout);
  for (const file of files) foldQuestions(file);
  opened.forEach((one, i) => {
    const manifest = 'input' in one && files[i]!.kind === 'fhir' ? manifestOf(one.input) : undefined;
    if (manifest) files[i]!.issues.push(...checkManifest(manifest, files[i]!.name, files));
  });
  return files;
}

const isFhir = ({ reader }: { reader: Reader }): boolean => reader.id === 'fhir';
