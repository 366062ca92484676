import { listIn, objectIn, textIn } from '../json/fields.ts';
import { readWritten } from '../times/instant.ts';
import type { FhirReading, Resource } from './reading.ts';

/** Reads a DeviceUseStatement: since when a sensor was worn. */
export function readWear(reading: FhirReading, resource: Resource): void {
  const { body } = resource;
  const start = textIn(objectIn(body, 'timingPeriod'), 'start') || textIn(body, 'timingDateTime');
  const at = readWritten(start, reading.today);
  if (textIn(body, 'status') === 'entered-in-error')
    reading.setAside(resource, 'status-not-usable', { actual: 'entered-in-error' });
  else if (!at.ok) reading.setAside(resource, at.code, { actual: start });
  else {
    const device = reading.resolve(textIn(objectIn(body, 'device'), 'reference'), body);
    const label = textIn(listIn(device, 'deviceName')[0], 'name');
    const origin = { file: reading.file, line: resource.line };
    const { wall, offset, timed } = at;
    reading.note({
      wall,
      offset,
      timed,
      kind: 'sensor',
      ...(label === '' ? {} : { label }),
      origin,
      row: resource.row,
    });
  }
}
