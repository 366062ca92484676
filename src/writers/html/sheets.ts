import type { Report } from '../../model/report.ts';

/**
 * The standing lines of every printed sheet, and its size. A sheet that gets separated still says whose it is and what
 * it covers; on the first one the page itself says so. Large print has room for two of them. Browsers without margin
 * boxes print the rest.
 */
export function sheetRules({ header, footer, paper, large = false }: Report): string {
  const boxes: [string, string][] = large
    ? [
        ['top-left', header.left],
        ['bottom-right', footer.right],
      ]
    : [
        ['top-left', header.left],
        ['top-right', header.right],
        ['bottom-left', footer.left],
        ['bottom-right', footer.right],
      ];
  const rules = boxes.map(([place, line]) => `@${place}{content:${counted(line)}}`);
  const size = large ? 'font-size:16pt;margin:25.4mm;' : '';
  return `@page{size:${paper};${size}${rules.join('')}}\n@page:first{@top-left{content:none}@top-right{content:none}}\n`;
}

/** A standing line for the screen, which has no sheets to count. */
export const onScreen = (line: string): string => (/\{pages?\}/.test(line) ? '' : line);

const counted = (line: string): string =>
  line
    .split(/(\{pages?\})/)
    .map((part) => {
      if (part === '{page}') return 'counter(page)';
      return part === '{pages}' ? 'counter(pages)' : cssText(part);
    })
    .join(' ');

/** A text as a CSS string: letters, digits and spaces as they are, all else by number. */
const cssText = (text: string): string =>
  `"${text
    .replace(/\p{Cs}/gu, '\ufffd')
    .replace(/[\p{Cc}\u202a-\u202e]/gu, ' ')
    .replace(/[^\p{L}\p{M}\p{N} ]/gu, (sign) => `\\${sign.codePointAt(0)!.toString(16)} `)}"`;
