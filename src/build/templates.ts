import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { compileTemplate } from '../cli/compileTemplate.ts';

/**
 * Checks the page template of the project at `home` and writes it, taken apart, as page.json into the folder `into`, so
 * that the built command needs no HTML reader; gives what it wrote. Throws with every fault when the template has any.
 */
export async function keepTemplate(home: string, into: string): Promise<string> {
  const read = (name: string): string => readFileSync(join(home, 'templates', name), 'utf8');
  const compiled = await compileTemplate({ html: read('page.html'), css: read('page.css') });
  if (!compiled.ok) throw new Error(`templates/page.html or page.css: ${JSON.stringify(compiled.issues, null, 2)}`);
  const kept = JSON.stringify(compiled.template);
  writeFileSync(join(into, 'page.json'), kept);
  return kept;
}
