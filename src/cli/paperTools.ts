import { deflateSync } from 'node:zlib';
import type { Deflate } from '../bytes/pack.ts';
import type { PaperTools, WebPages } from '../papers/makePapers.ts';
import { setAsideCsv } from '../papers/setAside.ts';
import type { Door } from './door.ts';
import { cuts, fonts } from './home.ts';
import { openPages } from './webPage.ts';

/** The engine's own packer; the one in JavaScript costs a tenth of a report. One object, so that what it packed is kept. */
const deflate: Deflate = (bytes, level) => deflateSync(bytes, level === undefined ? {} : { level });

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
    deflate,
    cuts: cuts(),
    aboutNumbers: tell.say('cli.told.output.analysis'),
    setAside: (analysis) => setAsideCsv(tell, analysis),
    openPages() {
      pages ??= openPages({ tell, complain });
      return pages;
    },
  };
}
