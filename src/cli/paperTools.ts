import type { PaperTools, WebPages } from '../clinic/papers.ts';
import type { Door } from './door.ts';
import { fonts } from './home.ts';
import { setAsideCsv } from './setAside.ts';
import { openPages } from './webPage.ts';

/** What the making of papers needs of the disk and of our own words; for one person or, kept, for many. */
export function paperTools({
  tell,
  version,
  complain,
}: Pick<Door, 'tell' | 'version' | 'complain'>): Omit<PaperTools, 'words'> {
  let pages: Promise<WebPages> | undefined;
  return {
    // Read once: the writer knows a face it has parsed by its bytes.
    fonts: fonts(),
    version,
    aboutNumbers: tell.say('cli.told.output.analysis'),
    setAside: (analysis) => setAsideCsv(tell, analysis),
    openPages() {
      pages ??= openPages({ tell, complain });
      return pages;
    },
  };
}
