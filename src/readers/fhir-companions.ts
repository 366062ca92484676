import type { Input } from '../model/input.ts';
import { referenceTable, resourcesOf } from './fhir-bundle.ts';
import type { Resolve, Resource } from './fhir-reading.ts';
import { openJson, textIn } from './json.ts';

/** Kinds that others refer to. In a bulk export each kind has a file of its own. */
const REFERRED = /"resourceType"\s*:\s*"(?:Patient|Device|Medication)"/;
const KINDS = new Set(['Patient', 'Device', 'Medication']);
/** Files of persons, devices and medicines are small; what is larger holds readings. */
const MOST_BYTES = 20_000_000;

/** Persons, devices and medicines of all FHIR files together, so that references across files are resolved. */
export function companionsOf(inputs: Input[]): Resolve | undefined {
  const resources: Resource[] = [];
  for (const { bytes } of inputs) {
    if (bytes.length > MOST_BYTES || !REFERRED.test(Buffer.from(bytes).toString('latin1'))) continue;
    const opened = openJson(bytes);
    if ('brokenAt' in opened) continue;
    for (const resource of resourcesOf(opened).resources)
      if (KINDS.has(textIn(resource.body, 'resourceType'))) resources.push(resource);
  }
  return resources.length > 0 ? referenceTable(resources) : undefined;
}
