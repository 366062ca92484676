import type { Block, Report } from '../model/report.ts';

const RULE = '_'.repeat(60);

/**
 * One page of a report as plain text, to edit anywhere and paste into a record: one line a sentence or paragraph, lines
 * to write on, no layout. Empty when the report has no such page.
 */
export function pageAsText(report: Report, id: string): string {
  const page = report.pages.find((one) => one.id === id);
  if (!page) return '';
  const lines = [report.header.left, report.header.right, '', ...page.blocks.flatMap(linesOf), '', report.footer.left];
  const text = lines.map(plainLine).join('\n');
  return `${text.replace(/\n{3,}/g, '\n\n').trim()}\n`;
}

/**
 * No-break spaces are for paper: pasted into a form they are found by no search. What a name or a note holds of controls and
 * of signs that turn the direction of writing would do its work wherever the text is pasted.
 */
const plainLine = (line: string): string =>
  line.replace(/[\u00a0\u202f\t\n\r\p{Zl}\p{Zp}]+/gu, ' ').replace(/[\p{Cc}\p{Cf}\p{Cs}]/gu, '');

function linesOf(block: Block): string[] {
  switch (block.kind) {
    case 'heading':
      return ['', block.text, ''];
    case 'paragraph':
    case 'caution':
      return [block.text];
    case 'list':
    case 'boxes':
      return block.items.map((item) => `- ${item}`);
    case 'table':
      return ['', block.caption, ...block.rows.map((row) => row.map(({ text }) => text).join(', '))];
    case 'chart':
      return [block.drawing.summary];
    case 'writeIn':
      if (block.text !== undefined) return [[block.label, block.text].filter((part) => part !== undefined).join(': ')];
      return [
        '',
        ...(block.label === undefined ? [] : [`${block.label}:`]),
        ...Array.from({ length: block.lines }, () => RULE),
      ];
    case 'columns':
      return block.columns.flat().flatMap(linesOf);
    case 'panel':
    case 'together':
      return block.blocks.flatMap(linesOf);
    case 'fit':
      return block.forms[0]!().flatMap(linesOf);
    case 'space':
    case 'pageBreak':
      return [''];
  }
}
