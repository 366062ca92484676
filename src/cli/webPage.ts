import { fingerprint } from '../bytes/hash.ts';
import type { WebPages } from '../papers/makePapers.ts';
import { openTemplate } from './compileTemplate.ts';
import type { Door } from './door.ts';
import { WrongUse } from './exits.ts';
import { ownFile } from './home.ts';
import { issueLines } from './tell.ts';

/** Opens the page template and gives what turns a report into a web page. Throws WrongUse when it has faults. */
export async function openPages({ tell, complain }: Pick<Door, 'tell' | 'complain'>): Promise<WebPages> {
  const { writeHtml } = await import('../writers/html/index.ts');
  const opened = await openTemplate(sources(), kept());
  if (opened.ok) return (report, options) => writeHtml(report, opened.template, options);
  for (const line of issueLines(tell, opened.issues)) complain(line);
  throw new WrongUse('wrongTemplate');
}

const text = (path: string): string => ownFile(path).toString('utf8');
const sources = () => ({ html: text('templates/page.html'), css: text('templates/page.css') });

/** Of the page template: a clinic that changes it gets other pages of the same analysis. */
export const templateHash = (): string => fingerprint(JSON.stringify(sources()));

/** The template as it was when the command was built; none when it is run from its source. */
function kept(): unknown {
  try {
    return JSON.parse(ownFile('dist/page.json').toString('utf8'));
  } catch {
    return undefined;
  }
}
