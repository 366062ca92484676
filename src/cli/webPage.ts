import type { Report } from '../model/report.ts';
import type { Door } from './door.ts';
import { WrongUse } from './exits.ts';
import { ownFile } from './home.ts';
import { issueLines } from './tell.ts';

/** Opens the page template and gives what turns a report into a web page. Throws WrongUse when it has faults. */
export async function webPages({ tell, words, complain }: Door, grey: boolean): Promise<(report: Report) => string> {
  const { openTemplate, writeHtml } = await import('../writers/html/index.ts');
  const text = (path: string): string => ownFile(path).toString('utf8');
  const opened = await openTemplate({ html: text('templates/page.html'), css: text('templates/page.css') }, kept());
  if (opened.ok) return (report) => writeHtml(report, opened.template, { words, grey });
  for (const line of issueLines(tell, opened.issues)) complain(line);
  throw new WrongUse('wrongTemplate');
}

/** The template as it was when the command was built; none when it is run from its source. */
function kept(): unknown {
  try {
    return JSON.parse(ownFile('dist/page.json').toString('utf8'));
  } catch {
    return undefined;
  }
}
