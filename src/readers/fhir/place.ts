import type { NotePlace } from '../../model/input.ts';
import { type Json, listIn, objectIn, textIn } from '../json/fields.ts';
import { readWritten, type WrittenTime } from '../times/instant.ts';
import type { FhirReading, Resource } from './reading.ts';

/** When something was observed or taken, as written; '' where it is not told. */
export function whenText(body: Json): string {
  return (
    textIn(body, 'effectiveDateTime') ||
    textIn(body, 'effectiveInstant') ||
    textIn(objectIn(body, 'effectivePeriod'), 'start')
  );
}

/** The time of what was observed; issued and lastUpdated never stand in for it. */
function timeOf(reading: FhirReading, body: Json): WrittenTime {
  for (const key of ['effectiveDateTime', 'effectiveInstant', 'effectivePeriod']) {
    for (const extension of listIn(objectIn(body, `_${key}`), 'extension')) {
      if (textIn(extension, 'url').endsWith('/StructureDefinition/tz-code')) {
        const zone = textIn(extension, 'valueCode');
        if (zone !== '') reading.zones.add(zone);
      }
    }
  }
  const at = readWritten(whenText(body), reading.today);
  if (at.ok && at.zone !== '') reading.zones.add(at.zone);
  return at;
}

/** Where a resource stands in time and in its file; undefined after setting aside one that may not be used or has no time. */
export function placeOf(reading: FhirReading, resource: Resource, usable: boolean): NotePlace | undefined {
  const { body, line, row } = resource;
  if (!usable) {
    reading.setAside(resource, 'status-not-usable', { actual: textIn(body, 'status') || { is: 'no-status' } });
    return undefined;
  }
  const [modifier] = listIn(body, 'modifierExtension');
  if (modifier !== undefined) {
    reading.setAside(resource, 'meaning-modified', { actual: textIn(modifier, 'url') });
    return undefined;
  }
  const at = timeOf(reading, body);
  if (!at.ok) {
    reading.setAside(resource, at.code, { actual: whenText(body) });
    return undefined;
  }
  return { wall: at.wall, offset: at.offset, timed: at.timed, origin: { file: reading.file, line }, row };
}
