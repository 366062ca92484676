import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** What the page's frames are asked to print, kept in `window.printed` in place of a dialog: the title of the paper, its markup and its looks. */
export const COLLECT = `(() => {
  window.printed = [];
  const { get } = Object.getOwnPropertyDescriptor(HTMLIFrameElement.prototype, 'contentWindow');
  Object.defineProperty(HTMLIFrameElement.prototype, 'contentWindow', {
    configurable: true,
    get() {
      const own = get.call(this);
      const text = (sheet) => [...sheet.cssRules].map((rule) => rule.cssText).join('\\n');
      if (own)
        own.print = () => {
          const { documentElement, adoptedStyleSheets } = own.document;
          const style = adoptedStyleSheets.map(text).join('\\n');
          window.printed.push({ title: this.title, html: documentElement.outerHTML, style });
        };
      return own;
    },
  });
})()`;

export interface Printed {
  title: string;
  html: string;
  style: string;
}

/** What was printed as a page of its own. Nothing of it can run. */
export const alone = ({ html, style }: Printed): string =>
  `<!doctype html>\n${html.replace('</head>', () => `<style>${style.replaceAll('</', '<\\/')}</style></head>`)}`;

/** What a PDF holds, whoever made it: its pages and their text. */
export async function pdfPages(pdf: Buffer): Promise<string[]> {
  const task = getDocument({ data: new Uint8Array(pdf), verbosity: 0 });
  const document = await task.promise;
  const pages: string[] = [];
  for (let n = 1; n <= document.numPages; n++) {
    const { items } = await (await document.getPage(n)).getTextContent();
    pages.push(items.map((item) => ('str' in item ? item.str : '')).join(' '));
  }
  await task.destroy();
  return pages;
}

/**
 * How many sides each part of a paper takes, by its layout: what is said of print holds on the screen, in a column as wide as the paper's
 * (A4, margins of templates/page.css: 175 by 267 mm).
 */
export const onSides = (printed: Printed): string =>
  alone({
    ...printed,
    style: `${printed.style.replace(/@media print\b/g, '@media all')}\nhtml{width:175mm!important}`,
  });
export const SIDES = `[...document.querySelectorAll('section.page')].map((part) =>
  Math.ceil((part.getBoundingClientRect().height * 25.4) / 96 / 267))`;
