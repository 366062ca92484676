import type { Report } from '../../model/report.ts';

/**
 * The standing lines of every printed sheet, and its size. A sheet that gets separated still says whose it is and what
 * it covers; on the first one the page itself says so. Browsers without margin boxes print the rest.
 */
export function sheetRules({ header, footer, paper }: Report): string {
  const counted = footer.right.split(/(\{pages?\})/).map((part) => {
    if (part === '{page}') return 'counter(page)';
    return part === '{pages}' ? 'counter(pages)' : cssText(part);
  });
  const boxes = {
    'top-left': cssText(header.left),
    'top-right': cssText(header.right),
    'bottom-left': cssText(footer.left),
    'bottom-right': counted.join(' '),
  };
  const rules = Object.entries(boxes).map(([place, content]) => `@${place}{content:${content}}`);
  return `@page{size:${paper};${rules.join('')}}\n@page:first{@top-left{content:none}@top-right{content:none}}\n`;
}

/** A text as a CSS string: letters, digits and spaces as they are, all else by number. */
const cssText = (text: string): string =>
  `"${text
    .replace(/\p{Cs}/gu, '\ufffd')
    .replace(/[\p{Cc}\u202a-\u202e]/gu, ' ')
    .replace(/[^\p{L}\p{M}\p{N} ]/gu, (sign) => `\\${sign.codePointAt(0)!.toString(16)} `)}"`;
