import { speakerOf } from '../language/index.ts';
import type { Block } from '../model/report.ts';
import { methodPage } from '../pages/index.ts';
import { targetSets } from '../targets/index.ts';

/** The paper on how each number is made, as a page of docs/: the same words that a clinic prints. */
export function methodDoc(words: unknown): string {
  const { blocks } = methodPage(speakerOf(words, { unit: 'mg/dL', voice: 'clinic', targets: targetSets.adult }));
  return `${blocks.map(markdown).join('\n\n').replaceAll('\u00a0', ' ')}\n`;
}

const cell = (text: string): string => text.replaceAll('|', '\\|');

function markdown(block: Block): string {
  switch (block.kind) {
    case 'heading':
      return `${'#'.repeat(block.level)} ${block.text}`;
    case 'paragraph':
      return block.text;
    case 'list':
      return block.items.map((item) => `- ${item}`).join('\n');
    case 'table':
      return [
        `| ${block.columns.map(({ title }) => cell(title)).join(' | ')} |`,
        `|${block.columns.map(() => '---').join('|')}|`,
        ...block.rows.map((row) => `| ${row.map(({ text }) => cell(text)).join(' | ')} |`),
      ].join('\n');
    default:
      throw new Error(`docs/method.md knows no ${block.kind}`);
  }
}
