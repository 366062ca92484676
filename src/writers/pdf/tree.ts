import { once } from '../../once.ts';
import type { Pdf, Ref } from './document.ts';

/** An element of the document's structure: what a screen reader walks through, in reading order. */
export interface Node {
  kind: string;
  children: Node[];
  /** Marked content: sheet and number on that sheet. */
  content: [sheet: number, mark: number][];
  alt?: string;
  /** The true text, where the glyphs do not tell it. */
  actual?: string;
  scope?: 'Column' | 'Row';
  /** So many columns a cell goes over. */
  span?: number;
  /** How the entries of a list are marked. */
  numbering?: 'Decimal' | 'Disc' | 'None';
  /** What a table shows, when its caption is not printed. */
  summary?: string;
  /** Sheet coordinates in points, y up, as the file wants them. */
  box?: [number, number, number, number];
}

export function node(kind: string, parent?: Node, extra: Partial<Node> = {}): Node {
  const created: Node = { kind, children: [], content: [], ...extra };
  parent?.children.push(created);
  return created;
}

/** Writes the tree. `sheets[i].marks[n]` is the node that owns mark n of sheet i. */
export function writeTree(pdf: Pdf, root: Node, sheets: { page: Ref; treeKey: number; marks: Node[] }[]): void {
  const refs = new Map<Node, Ref>();
  const holds = holders();
  const treeRoot = pdf.getStructTreeRoot();

  const write = (it: Node, parent: Ref): Ref | null => {
    if (!holds(it)) return null;
    const data: Record<string, unknown> = { S: it.kind, P: parent };
    const ref = pdf.ref(data);
    refs.set(it, ref);
    if (it.alt) data.Alt = new String(it.alt);
    if (it.actual) data.ActualText = new String(it.actual);
    const attributes = attributesOf(it);
    if (attributes) data.A = attributes;
    const home = it.content[0]?.[0];
    if (home !== undefined) data.Pg = sheets[home]!.page;
    const kids: unknown[] = it.content.map(([sheet, mark]) =>
      sheet === home ? mark : { Type: 'MCR', Pg: sheets[sheet]!.page, MCID: mark },
    );
    for (const child of it.children) if (holds(child)) kids.push(write(child, ref));
    data.K = kids;
    ref.end();
    return ref;
  };

  const top = write(root, treeRoot);
  treeRoot.data.K = top ? [top] : [];
  for (const sheet of sheets) {
    const owners = pdf.getStructParentTree().get(sheet.treeKey);
    for (const owner of sheet.marks) owners.push(refs.get(owner)!);
  }
}

/** Elements that mark nothing are left out, except cells: a row keeps its empty cells. Each is looked at once. */
function holders(): (it: Node) => boolean {
  const holds = once(
    (it: Node): boolean => it.content.length > 0 || it.kind === 'TD' || it.kind === 'TH' || it.children.some(holds),
  );
  return holds;
}

function attributesOf(it: Node): Record<string, unknown> | null {
  if (it.scope) return { O: 'Table', Scope: it.scope };
  if (it.span) return { O: 'Table', ColSpan: it.span };
  if (it.numbering) return { O: 'List', ListNumbering: it.numbering };
  if (it.summary) return { O: 'Table', Summary: new String(it.summary) };
  if (it.box) return { O: 'Layout', Placement: 'Block', BBox: it.box };
  return null;
}
