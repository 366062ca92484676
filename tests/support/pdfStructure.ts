import { archiveFaults } from './pdfArchive.ts';
import { codesShown, operationsOf, PAINTS } from './pdfContent.ts';
import { type Dict, type Objects, readObjects, textOf, type Value } from './pdfObjects.ts';

/** An element of the structure tree. */
export interface Element {
  id: string;
  role: string;
  dict: Dict;
  children: Element[];
  /** Marked content it owns, as `page mark`. */
  owns: string[];
}

/** Roles of ISO 32000-1, 14.8.4 that these papers use. */
const ROLES = /^\/(Document|Div|P|H[1-6]|L|LI|Lbl|LBody|Table|TR|TH|TD|Span|Figure|Link|Caption)$/;

/**
 * What speaks against a file being PDF/UA-1 (ISO 14289-1, from memory), as far as objects, content and tree can show:
 * conditions a machine can test of the Matterhorn protocol, named beside each. An empty list is no proof of conformance.
 */
export function structureFaults(bytes: Uint8Array): { faults: string[]; elements: Element[]; marks: number } {
  const objects = readObjects(bytes);
  const faults: string[] = [];
  const fault = (text: string): void => void faults.push(text);
  catalogue(objects, fault);
  const elements = treeOf(objects, fault);
  const marks = contents(objects, elements, fault);
  semantics(objects, elements, fault);
  // A locked file claims no archive.
  if (objects.trailer['/Encrypt'] === undefined) faults.push(...archiveFaults(objects, bytes));
  return { faults, elements, marks };
}

type Fault = (text: string) => void;

/** Language (11), title shown (07), marked (06), claim in the metadata (06), bookmarks. */
function catalogue({ root, dict, list, stream, pages }: Objects, fault: Fault): void {
  if (!textOf(root['/Lang'])) fault('no language');
  if (dict(root['/MarkInfo'])['/Marked'] !== true) fault('not marked as tagged');
  if (dict(root['/MarkInfo'])['/Suspects'] === true) fault('tags are suspect');
  if (dict(root['/ViewerPreferences'])['/DisplayDocTitle'] !== true) fault('the title is not shown');
  const xmp = stream(root['/Metadata']).toString('utf8');
  if (!/<pdfuaid:part>1<\/pdfuaid:part>/.test(xmp)) fault('no claim of PDF/UA-1');
  if (!/<dc:title>[\s\S]*\S[\s\S]*<\/dc:title>/.test(xmp)) fault('no title in the metadata');
  if (!dict(root['/Outlines'])['/First']) fault('no bookmarks');
  for (const { page } of pages) {
    for (const annotation of list(page['/Annots'])) {
      const it = dict(annotation);
      if (it['/Subtype'] !== '/Link') fault(`annotation ${it['/Subtype']}`);
      if (!textOf(it['/Contents'])) fault('a link without a description');
      if (it['/StructParent'] === undefined) fault('a link outside the tree');
      if (page['/Tabs'] !== '/S') fault('a page with annotations whose tab order is not that of the tree');
    }
  }
}

/** The tree from its root down: every element knows its parent (ISO 32000-1, table 323). */
function treeOf({ root, dict, list, at }: Objects, fault: Fault): Element[] {
  const treeRoot = root['/StructTreeRoot'];
  const all: Element[] = [];
  const walk = (value: Value, parent: Value | undefined): Element => {
    const it = dict(value);
    const role = String(it['/S']);
    const element: Element = { id: String(value), role: role.slice(1), dict: it, children: [], owns: [] };
    all.push(element);
    if (!ROLES.test(role)) fault(`unknown role ${role}`);
    if (it['/P'] !== parent) fault(`${role} does not know its parent`);
    const kids = Array.isArray(at(it['/K'])) ? list(it['/K']) : it['/K'] === undefined ? [] : [it['/K']!];
    if (kids.length === 0 && role !== '/TD' && role !== '/TH') fault(`empty ${role}`);
    for (const kid of kids) {
      const of = dict(kid);
      if (typeof kid === 'number') element.owns.push(`${it['/Pg']} ${kid}`);
      else if (of['/Type'] === '/MCR') element.owns.push(`${of['/Pg'] ?? it['/Pg']} ${of['/MCID']}`);
      else if (of['/Type'] !== '/OBJR') element.children.push(walk(kid, value));
    }
    return element;
  };
  const tops = list(dict(treeRoot)['/K']);
  if (tops.length !== 1) fault('the tree has not one top');
  for (const top of tops) if (walk(top, treeRoot).role !== 'Document') fault('the top is not Document');
  return all;
}

/** Every painting operator lies in a mark that the tree owns, or in an artifact (01); fonts carry glyphs and text (10, 31). */
function contents(objects: Objects, elements: readonly Element[], fault: Fault): number {
  const { pages, dict, list, stream, root } = objects;
  const owner = new Map(elements.flatMap((element) => element.owns.map((mark) => [mark, element.id] as const)));
  if (owner.size !== elements.reduce((sum, { owns }) => sum + owns.length, 0)) fault('a mark has two owners');
  const numbers = list(dict(dict(root['/StructTreeRoot'])['/ParentTree'])['/Nums']);
  let marks = 0;
  pages.forEach(({ id, page }, index) => {
    const where = `page ${index + 1}`;
    const key = page['/StructParents'];
    const parents = list(numbers[numbers.indexOf(key as Value) + 1]);
    if (typeof key !== 'number') fault(`${where} is not in the parent tree`);
    const codes = new Map<string, Set<number>>();
    const open: string[] = [];
    const seen = new Set<number>();
    let font = '';
    let last: Value | undefined;
    const content = list(page['/Contents'])
      .map((part) => stream(part).toString('latin1'))
      .join('\n');
    for (const operation of operationsOf(content)) {
      const { operator, operands } = operation;
      if (operator === 'BMC' || operator === 'BDC') {
        const mark = /\/MCID (\d+)/.exec(operands.join(' '))?.[1];
        const kind = operands[0] === '/Artifact' ? 'artifact' : mark === undefined ? 'plain' : 'content';
        if (kind !== 'plain' && open.some((one) => one !== 'plain'))
          fault(`${where}: ${kind} within ${open.join(', ')}`);
        open.push(kind);
        if (mark === undefined) continue;
        if (seen.has(Number(mark))) fault(`${where}: mark ${mark} twice`);
        seen.add(Number(mark));
        const parent = parents[Number(mark)];
        last = parent;
        if (parent === undefined || parent !== owner.get(`${id} ${mark}`)) fault(`${where}: mark ${mark} has no owner`);
      } else if (operator === 'EMC') {
        if (open.pop() === undefined) fault(`${where}: a mark is closed that was not open`);
      } else if (operator === 'Tf') font = operands[0]!;
      if (!PAINTS.has(operator)) continue;
      if (!open.includes('artifact') && !open.includes('content')) fault(`${where}: ${operator} outside any mark`);
      if (operator === 'Do' || operator === 'BI') fault(`${where}: an image`);
      const used = codes.get(font) ?? new Set();
      for (const code of codesShown(operation)) used.add(code);
      codes.set(font, used);
    }
    if (/^\/H\d/.test(String(dict(last)['/S']))) fault(`${where} ends with a heading`);
    if (open.length > 0) fault(`${where}: a mark is left open`);
    if (parents.length !== seen.size) fault(`${where}: ${parents.length} parents for ${seen.size} marks`);
    for (const mark of owner.keys()) {
      if (mark.startsWith(`${id} `) && !seen.has(Number(mark.slice(id.length)))) fault(`${where}: no mark ${mark}`);
    }
    marks += seen.size;
    const fonts = dict(dict(page['/Resources'])['/Font']);
    for (const [name, used] of codes) checkFont(objects, fonts[name], used, `${where}, ${name}`, fault);
  });
  return marks;
}

/** Embedded, with a Unicode value for every glyph shown and none that is missing (ISO 14289-1, 7.21). */
function checkFont(
  { dict, list, stream }: Objects,
  value: Value | undefined,
  used: Set<number>,
  name: string,
  fault: Fault,
) {
  if (used.size === 0) return;
  const font = dict(value);
  const descendant = dict(list(font['/DescendantFonts'])[0]);
  const descriptor = dict(descendant['/FontDescriptor']);
  if (!descriptor['/FontFile2'] && !descriptor['/FontFile3']) fault(`${name}: not embedded`);
  if (descendant['/Subtype'] === '/CIDFontType2' && !descendant['/CIDToGIDMap']) fault(`${name}: no map to its glyphs`);
  if (used.has(0)) fault(`${name}: shows the missing glyph`);
  const known = unicodeOf(stream(font['/ToUnicode']).toString('latin1'));
  const unknown = [...used].filter((code) => !known.has(code));
  if (unknown.length > 0) fault(`${name}: no Unicode value for ${unknown.join(', ')}`);
}

/** Codes with a value other than 0 in a ToUnicode map whose ranges list their values one by one. */
function unicodeOf(map: string): Set<number> {
  const known = new Set<number>();
  for (const [, from, , values] of map.matchAll(/<([0-9a-f]{4})> <([0-9a-f]{4})> \[([^\]]*)\]/gi)) {
    (values!.match(/<[0-9a-f\s]*>/gi) ?? []).forEach((each, i) => {
      if (!/^<[0\s]*>$/.test(each)) known.add(Number.parseInt(from!, 16) + i);
    });
  }
  return known;
}

/** Figures (13), tables (15), lists (16), headings (14). */
function semantics({ dict }: Objects, elements: readonly Element[], fault: Fault): void {
  const levels = elements.flatMap(({ role }) => (/^H[1-6]$/.test(role) ? [Number(role[1])] : []));
  if (levels.filter((level) => level === 1).length !== 1 || levels[0] !== 1) fault(`headings ${levels.join(' ')}`);
  levels.forEach((level, i) => {
    if (level > (levels[i - 1] ?? 0) + 1) fault(`a heading skips to level ${level}`);
  });
  for (const { role, dict: it, children, owns } of elements) {
    const within = children.map((child) => child.role).join(' ');
    const attributes = dict(it['/A']);
    if (role === 'Figure') {
      if (!/\S/.test(textOf(it['/Alt']) ?? '')) fault('a figure without a description');
      if (!attributes['/BBox']) fault('a figure without its box');
    }
    if (role === 'L' && !/^(LI ?)+$/.test(within)) fault(`a list of ${within}`);
    if (role === 'L' && !/^\/(None|Disc|Decimal)$/.test(String(attributes['/ListNumbering'])))
      fault('a list without its numbering');
    if (role === 'LI' && !/^(Lbl )?LBody$/.test(within)) fault(`an entry of ${within}`);
    if (role === 'Table') {
      if (!/^(Caption )?(TR ?)+$/.test(within)) fault(`a table of ${within}`);
      const columns = (cell: Element): number => Number(dict(cell.dict['/A'])['/ColSpan'] ?? 1);
      const width = (row: Element): number => row.children.reduce((sum, cell) => sum + columns(cell), 0);
      const widths = new Set(children.filter((row) => row.role === 'TR').map(width));
      if (widths.size !== 1) fault('a table whose rows differ in length');
      const head = children.find((row) => row.role === 'TR')!;
      if (head.children.some((cell) => cell.role !== 'TH')) fault('a table without a head');
      // A cell over the whole row is what the row says.
      const nameless = ({ children: [first, second] }: Element): boolean =>
        first!.role !== 'TH' && first!.owns.length > 0 && second !== undefined;
      if (children.some((row) => row.role === 'TR' && nameless(row))) fault('a row that nothing names');
    }
    if (role === 'TR' && !/^(T[HD] ?)+$/.test(within)) fault(`a row of ${within}`);
    if (role === 'TH' && !/^\/(Column|Row)$/.test(String(attributes['/Scope']))) fault('a head cell without a scope');
    if (/^(P|H[1-6]|Lbl)$/.test(role) && owns.length + children.length === 0) fault(`an empty ${role}`);
  }
}
