import { resolve } from 'node:path';
import { contentOf } from '../../clinic/lists.ts';
import { USUAL } from '../../clinic/thresholds.ts';
import { rank } from '../../clinic/worklist.ts';
import type { Door } from '../door.ts';
import { EXIT, reasonOf, WrongUse } from '../exits.ts';
import { reasonText } from '../tell.ts';
import { readThresholds } from './asked.ts';
import { exitOf } from './exit.ts';
import { formerIn } from './former.ts';
import { clearHeld, giveOutAll } from './held.ts';
import { partsIn } from './parts.ts';
import { saveLists } from './save.ts';
import { tellLists } from './tellLists.ts';

export interface WorklistOptions {
  out?: string;
  thresholds?: string;
  byVisit?: boolean;
  places?: number;
  paper?: 'a4' | 'letter';
  grey?: boolean;
  clinic?: string;
}

/** Makes one worklist from the parts of a divided run, or again from a whole one. Gives the exit code. */
export async function worklist(folders: string[], given: WorklistOptions, door: Door): Promise<number> {
  const { tell, print, complain } = door;
  const parts = partsIn(folders);
  const out = given.out ?? folders[0]!;
  const thresholds = given.thresholds === undefined ? USUAL : await readThresholds(given.thresholds);
  const folderOf = new Map(parts.flatMap((part) => part.outcomes.map((outcome) => [outcome, part.folder] as const)));
  // Only over all parts is it seen whether a file lies with two people.
  const { outcomes, unsaved } = giveOutAll([...folderOf.keys()], (outcome) => folderOf.get(outcome)!, 'all');
  for (const folder of folders) clearHeld(folder, false);
  const stemsIn = (folder: string) => new Set([...folderOf].flatMap(([{ stem }, of]) => (of === folder ? [stem] : [])));
  const former = folders.flatMap((folder) => formerIn(folder, stemsIn(folder)));
  const passedOver = parts.flatMap((part) => part.passedOver);
  const inSameFolder = folders.every((folder) => resolve(folder) === resolve(out));
  const lines = rank(outcomes, thresholds);
  const printed = parts
    .map((part) => part.printed)
    .sort()
    .at(-1)!;
  const printing = {
    printed,
    version: door.version,
    paper: given.paper ?? 'a4',
    grey: given.grey ?? false,
    clinic: given.clinic,
  };
  try {
    const names = await saveLists(
      out,
      {
        ...contentOf(lines, thresholds, passedOver, inSameFolder, given.byVisit ? 'visit' : 'pressing', given.places),
        former,
      },
      printing,
      door,
    );
    print(tell.say('cli.clinic.written', { folder: out, names: names.join(', ') }));
  } catch (error) {
    if (error instanceof WrongUse) throw error;
    complain(
      tell.say('cli.clinic.listsUnsaved', { path: out, reason: { sentence: reasonText(tell, reasonOf(error)) } }),
    );
    return EXIT.partly;
  }
  tellLists(door, lines, passedOver, former);
  return unsaved === null ? exitOf(outcomes) : EXIT.partly;
}
