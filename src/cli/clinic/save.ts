import { listSpeaker, type Printing, worklistCsv, worklistReport } from '../../clinic/lists.ts';
import { measuresCsv } from '../../clinic/table.ts';
import type { WorklistContent } from '../../pages/worklist.ts';
import type { Door } from '../door.ts';
import { fonts } from '../home.ts';
import { type Output, saveAll } from '../save.ts';
import { openPages } from '../webPage.ts';

/** Writes the worklist in its three forms and the table of measures, all or none. Gives their names. */
export async function saveLists(
  out: string,
  content: WorklistContent,
  printing: Printing & { grey: boolean },
  door: Door,
): Promise<string[]> {
  const { writePdf } = await import('../../writers/pdf/index.ts');
  const speaker = listSpeaker(door.words);
  const paper = worklistReport(content, speaker, printing, 'paper');
  const page = await openPages(door);
  const outputs: Output[] = [
    { name: 'worklist.pdf', bytes: await writePdf(paper, fonts(), { version: door.version, grey: printing.grey }) },
    {
      name: 'worklist.html',
      bytes: page(worklistReport(content, speaker, printing, 'screen'), { words: door.words, grey: printing.grey }),
    },
    { name: 'worklist.csv', bytes: worklistCsv(content.lines, speaker) },
    { name: 'measures.csv', bytes: measuresCsv(content.lines) },
  ];
  saveAll(out, outputs);
  return outputs.map(({ name }) => name);
}
