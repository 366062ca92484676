import type { Block, Report } from '../../src/model/report.ts';

/** All a reader can read on a paper, one block after another, with its headings, tables and what charts say. */
export function pageText(report: Report): string {
  const pages = report.pages.map(({ title, blocks }) => [`==== ${title}`, ...blocks.flatMap(lines)].join('\n'));
  const standing = [report.title, report.header.left, report.header.right, report.footer.left, report.footer.right];
  return `${standing.join('\n')}\n\n${pages.join('\n\n')}\n`;
}

/** Blocks or pages as JSON, every form of every block told. */
export const everyForm = (some: unknown): string =>
  JSON.stringify(some, (_, value: unknown) => (typeof value === 'function' ? value() : value));

function lines(block: Block): string[] {
  switch (block.kind) {
    case 'heading':
      return ['', `${'#'.repeat(block.level)} ${block.text}`];
    case 'paragraph':
      return [block.text];
    case 'list':
      return block.items.map((item) => `- ${item}`);
    case 'table':
      return [
        `[table] ${block.caption}`,
        block.columns.map(({ title }) => title).join(' | '),
        ...block.rows.map((row) => row.map(({ text }) => text).join(' | ')),
      ];
    case 'chart':
      return [
        `[chart] ${block.title ?? ''} ${block.drawing.summary}`,
        `  ${block.drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join(' · ')}`,
      ];
    case 'boxes':
      return block.items.map((item) => `[ ] ${item}`);
    case 'writeIn':
      return [`${block.label === undefined ? '' : `${block.label} `}____ × ${block.lines}`];
    case 'caution':
      return [`(${block.id}) ${block.text}`];
    case 'columns':
      return block.columns.flatMap((column) => column.flatMap(lines));
    case 'panel':
    case 'together':
      return block.blocks.flatMap(lines);
    case 'fit':
      return block.forms[0]!().flatMap(lines);
    case 'space':
    case 'pageBreak':
      return [];
  }
}
