import { find } from '../../bytes/text.ts';
import type { Input } from '../../model/input.ts';
import type { Hints } from '../hints.ts';
import { openJson } from '../json/jsonText.ts';
import { patientCodes, referenceTable, resourcesOf } from './bundle.ts';
import { addAll, type Deletions } from './deletions.ts';
import type { Resource } from './reading.ts';

/** Kinds that others refer to, each with a file of its own in a bulk export, and the word of a list of deletions. */
const MARKS = ['"Patient"', '"Device"', '"Medication"', '"DELETE"'];
/** Files of persons, devices, medicines and deletions are small; what is larger holds readings. */
const MOST_BYTES = 20_000_000;

/**
 * Persons, devices and medicines of all FHIR files together, so that references across files are resolved, and the
 * records that any of them takes back.
 */
export function companionsOf(inputs: Input[]): Pick<Hints, 'resolve' | 'patients' | 'deleted'> {
  const resources: Resource[] = [];
  const deleted: Deletions = new Map();
  for (const { bytes } of inputs) {
    if (bytes.length > MOST_BYTES || !MARKS.some((mark) => find(bytes, mark) >= 0)) continue;
    const opened = openJson(bytes);
    const found = 'brokenAt' in opened ? opened : resourcesOf(opened);
    if ('brokenAt' in found) continue;
    addAll(deleted, found.deletions);
    for (const resource of found.held.values())
      if (resource.body.resourceType !== 'Observation') resources.push(resource);
  }
  return {
    ...(resources.length > 0 ? { resolve: referenceTable(resources), patients: patientCodes(resources) } : {}),
    ...(deleted.size > 0 ? { deleted } : {}),
  };
}
