import { join } from 'node:path';
import { MANIFEST } from '../../clinic/listing.ts';
import { manifestText } from '../../clinic/manifestText.ts';
import { printable } from '../../papers/teller.ts';
import type { Door } from '../door.ts';
import { EXIT, reasonOf, WrongUse } from '../exits.ts';
import { saveAll } from '../save.ts';
import type { Asked } from './asked.ts';

/** The one file that is ever written among the exports, and only when asked for. Throws WrongUse where there is one. */
export function writeManifest({ folder, people, manifest }: Asked, { tell, print }: Door): number {
  const path = join(folder, MANIFEST);
  if (manifest) throw new WrongUse('manifestThere', { path });
  const { text, lines, leftOut } = manifestText(people);
  try {
    saveAll(folder, [{ name: MANIFEST, bytes: text }]);
  } catch (error) {
    throw new WrongUse('cannotWriteFolder', { path: folder, reason: reasonOf(error) });
  }
  print(tell.say('cli.clinic.manifestWritten', { path, n: lines }));
  if (leftOut.length > 0) {
    print(tell.say('cli.clinic.manifestLeftOut', { n: leftOut.length, names: printable(leftOut.join(', ')) }));
  }
  return EXIT.done;
}
