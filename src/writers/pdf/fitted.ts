import type { Block, BlockOf, Form } from '../../model/report.ts';
import { once } from '../../once.ts';
import { blocksFlow } from './blocks.ts';
import { chain, type Flow, TIGHTEST } from './flow.ts';
import type { Setting } from './setting.ts';
import { type Node, node } from './tree.ts';

/** Blocks as measured once, with the elements that belong to them, which the document gets only where they are chosen. */
interface Measured {
  blocks: readonly Block[];
  flow: Flow;
  nodes: Node[];
}

/** A turn in giving way: a block may go through its forms from one to another. */
interface Turn {
  block: BlockOf<'fit'>;
  from: number;
  to: number;
  /** Smaller ones come first. */
  at: number;
}

/** A block gives way in one turn, or leaves its last form, which is a turn of its own, for later. */
function turnsOf(block: BlockOf<'fit'>): Turn[] {
  const { gives, goes, forms } = block;
  const last = forms.length - 1;
  if (goes === undefined) return [{ block, from: 0, to: last, at: gives }];
  return [
    { block, from: 0, to: last - 1, at: gives },
    { block, from: last - 1, to: last, at: goes },
  ];
}

/**
 * A page as one flow. Where blocks come in several forms, each in the fullest with which all stand on one sheet: from the
 * smallest `gives` on they give way until the page fits, then take back what room is left, the last to give way first.
 * `blocks` are those that stand on it.
 */
export function fitted(blocks: readonly Block[], width: number, setting: Setting): { flow: Flow; blocks: Block[] } {
  const elastic = blocks.filter((block): block is BlockOf<'fit'> => block.kind === 'fit');
  if (elastic.length === 0) return { flow: blocksFlow(blocks, width, setting), blocks: [...blocks] };
  const measured = (some: readonly Block[]): Measured => {
    const parent = node('Div');
    return { blocks: some, flow: blocksFlow(some, width, { ...setting, parent }), nodes: parent.children };
  };
  const plain = once((block: Block) => measured([block]));
  const tried = once((form: Form) => measured(form()));
  const form = new Map(elastic.map((block) => [block, 0]));
  const whole = (): Measured[] =>
    blocks.map((block) => (block.kind === 'fit' ? tried(block.forms[form.get(block)!]!) : plain(block)));
  const fits = (): boolean => tightHeight(whole()) <= setting.capacity;
  const order = elastic.flatMap(turnsOf).sort((a, b) => a.at - b.at);
  for (const { block, to } of order) while (form.get(block)! < to && !fits()) step(form, block, 1);
  for (const { block, from } of order.reverse())
    while (form.get(block)! > from) {
      step(form, block, -1);
      if (fits()) continue;
      step(form, block, 1);
      break;
    }
  const chosen = whole();
  setting.parent.children.push(...chosen.flatMap(({ nodes }) => nodes));
  return {
    flow: chain(chosen.map(({ flow }) => flow)),
    blocks: chosen.flatMap((one) => one.blocks),
  };
}

const step = (form: Map<BlockOf<'fit'>, number>, block: BlockOf<'fit'>, by: number): void => {
  form.set(block, form.get(block)! + by);
};

/** Height of all that `chain` would set one under another, as close as the page will be set where that spares a sheet. */
function tightHeight(measured: readonly Measured[]): number {
  let height = 0;
  let after = 0;
  let first = true;
  for (const { flow } of measured) {
    flow.strips.forEach((strip, i) => {
      const gap = i === 0 ? strip.gap + Math.max(after, flow.before) : strip.gap;
      height += strip.height + (first ? 0 : gap * TIGHTEST);
      first = false;
    });
    if (flow.strips.length > 0) after = flow.after;
  }
  return height;
}
