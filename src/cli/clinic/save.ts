import { listFiles } from '../../clinic/listFiles.ts';
import type { Printing } from '../../clinic/lists.ts';
import type { Place } from '../../language/index.ts';
import type { WorklistContent } from '../../pages/worklist.ts';
import type { Door } from '../door.ts';
import { fonts } from '../home.ts';
import { saveAll } from '../save.ts';
import { openPages } from '../webPage.ts';
import { paperWords } from '../words.ts';

/** Writes the worklist in its three forms and the table of measures, all or none. Gives their names. */
export async function saveLists(
  out: string,
  content: WorklistContent,
  printing: Printing & { grey: boolean; place?: Place },
  door: Door,
): Promise<string[]> {
  const { words } = door;
  const { place, ...rest } = printing;
  const outputs = await listFiles(content, rest, {
    words,
    paperWords: place ? paperWords(place) : words,
    fonts: fonts(),
    page: await openPages(door),
  });
  saveAll(out, outputs);
  return outputs.map(({ name }) => name);
}
