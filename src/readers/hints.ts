import type { GlucoseUnit } from '../model/glucose.ts';
import type { ReadFile, ReadSettings } from '../model/input.ts';
import type { Deletions } from './fhir/deletions.ts';
import type { Resolve } from './fhir/reading.ts';
import type { OrderHint } from './times/columnOrder.ts';
import type { DateOrder } from './times/dayOrder.ts';

/** What a person's other files tell about one that cannot tell by itself. */
export interface Hints {
  /** The date order all the others settled on. */
  order?: OrderHint;
  /** The unit all the others are in, and a file that says so. */
  unit?: { unit: GlucoseUnit; evidence: string };
  /** Persons, devices and medicines that stand in other files. */
  resolve?: Resolve;
  /** Codes of the Patients that stand in FHIR files. */
  patients?: Set<string>;
  /** FHIR records that one of the files takes back. */
  deleted?: Deletions;
}

/** What all files agree on that could tell it by themselves. */
export function agreed(files: ReadFile[]): Hints {
  const order = common(files, 'date-order');
  const unit = common(files, 'unit');
  return {
    ...(order ? { order: { order: order.value as DateOrder, evidence: order.evidence } } : {}),
    ...(unit && (unit.value === 'mg/dL' || unit.value === 'mmol/L')
      ? { unit: { unit: unit.value, evidence: unit.evidence } }
      : {}),
  };
}

/** Whether a file was refused for something that the others tell. */
export function isOpen(file: ReadFile, hints: Hints): boolean {
  return file.issues.some(
    ({ code }) =>
      (code === 'date-order-unclear' && hints.order !== undefined) ||
      (code === 'unit-unclear' && hints.unit !== undefined),
  );
}

/** Tells, of files that name no zone, that the one named by another file holds for them too. */
export function tellZone(files: ReadFile[], settings: ReadSettings): void {
  const named = files.filter(({ zone }) => zone !== undefined);
  const [first] = named;
  if (settings.zone !== undefined || !first || named.some(({ zone }) => zone !== first.zone)) return;
  for (const file of files) {
    if (file.zone === undefined && file.readings.count + file.notes.length > 0)
      file.choices.push({ id: 'zone', value: first.zone!, by: 'file', evidence: first.name });
  }
}

function common(files: ReadFile[], choice: string): { value: string; evidence: string } | undefined {
  let found: { value: string; evidence: string } | undefined;
  for (const file of files) {
    for (const { id, by, value } of file.choices) {
      if (id !== choice || by !== 'file') continue;
      if (found && found.value !== value) return undefined;
      found ??= { value, evidence: file.name };
    }
  }
  return found;
}
