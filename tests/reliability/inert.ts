import { parse } from 'csv-parse/sync';
import { JSDOM } from 'jsdom';
import { expect } from 'vitest';

/** Cells a spreadsheet would run, however it cuts the text into columns. */
export function running(csv: string): string[] {
  return [',', ';', '\t'].flatMap((delimiter) =>
    (parse(csv, { delimiter, relax_quotes: true, relax_column_count: true }) as string[][])
      .flat()
      .filter((cell) => /^[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/.test(cell) && !/^[+-]?\d+([.,]\d+)?$/.test(cell)),
  );
}

/** No element, attribute or address in a page that we do not put there ourselves. */
export function expectInertPage(html: string): void {
  const { document } = new JSDOM(html).window;
  expect(document.scripts).toHaveLength(1);
  expect(document.querySelectorAll('iframe,object,embed,img,link,base,form,video,audio,foreignObject')).toHaveLength(0);
  for (const element of document.querySelectorAll('*')) {
    for (const { name, value } of element.attributes) {
      expect(name, element.outerHTML.slice(0, 100)).not.toMatch(/^(on|style$|src|srcdoc|action|formaction)/);
      if (/href$/.test(name)) expect(value).toMatch(/^#/);
    }
  }
}

/** Lines for a terminal: no control or direction character but the pairs we put around foreign scripts. */
export function expectPlainLines(lines: string): void {
  expect(lines.replace(/[\u2068\u2069\n]/g, '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u);
  expect(lines.split('\u2068')).toHaveLength(lines.split('\u2069').length);
}

/** What a reader of any of our results would act on. */
export function expectInertFile(name: string, bytes: Uint8Array): void {
  const content = Buffer.from(bytes).toString(name.endsWith('.pdf') ? 'latin1' : 'utf8');
  if (name.endsWith('.json')) expect(() => JSON.parse(content), name).not.toThrow();
  if (name.endsWith('.csv')) expect(running(content), name).toEqual([]);
  if (name.endsWith('.html')) expectInertPage(content);
  if (name.endsWith('.pdf')) {
    // What a viewer would act on stands outside of streams, in plain dictionaries; texts are written as UTF-16.
    expect(content, name).not.toMatch(/\/(JavaScript|JS|Launch|URI|SubmitForm|GoToR|EmbeddedFile)\b/);
  }
}
