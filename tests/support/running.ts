import type { Block, Report } from '../../src/model/report.ts';

/** Running text under one heading: what a reader reads as sentences. Tables, charts and write-in lines are not. */
export interface Passage {
  title: string;
  text: string;
}

/** The passages of a report in reading order. Locked safety texts are left out: they have their own review. */
export function passages(report: Report, locked: ReadonlySet<string>): Passage[] {
  const found: Passage[] = [];
  const say = (text: string): void => {
    if (locked.has(text)) return;
    const last = found.at(-1);
    if (last) last.text = `${last.text}\n${text}`.trim();
  };
  const walk = (block: Block): void => {
    switch (block.kind) {
      case 'heading':
        found.push({ title: block.text, text: '' });
        break;
      case 'paragraph':
        say(block.text);
        break;
      case 'list':
      case 'boxes':
        for (const item of block.items) say(item);
        break;
      case 'columns':
        block.columns.flat().forEach(walk);
        break;
      case 'panel':
      case 'together':
        block.blocks.forEach(walk);
        break;
      case 'fit':
        block.forms[0]!().forEach(walk);
        break;
    }
  };
  for (const page of report.pages) {
    found.push({ title: page.title, text: '' });
    page.blocks.forEach(walk);
  }
  return found;
}
