import { readFileSync } from 'node:fs';
import { compileTemplate } from '../../src/cli/compileTemplate.ts';
import type { Report } from '../../src/model/report.ts';
import {
  type CompiledTemplate,
  type HtmlOptions,
  type TemplateSources,
  writeHtml,
} from '../../src/writers/html/index.ts';

const read = (path: string): string => readFileSync(new URL(`../../templates/${path}`, import.meta.url), 'utf8');

export const words: unknown = JSON.parse(read('words/en.json'));
export const sources: TemplateSources = { html: read('page.html'), css: read('page.css') };

let own: Promise<CompiledTemplate> | undefined;

/** The project's own template, or a failure that says what is wrong with it: compiled once. */
export function ownTemplate(): Promise<CompiledTemplate> {
  own ??= compiledOwn();
  return own;
}

async function compiledOwn(): Promise<CompiledTemplate> {
  const compiled = await compileTemplate(sources);
  if (!compiled.ok) throw new Error(JSON.stringify(compiled.issues, null, 2));
  return compiled.template;
}

export const webPage = (report: Report, template: CompiledTemplate, options: Partial<HtmlOptions> = {}): string =>
  writeHtml(report, template, { words, ...options });
