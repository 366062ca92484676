import { readFileSync } from 'node:fs';
import { inflateSync } from 'node:zlib';
import { getDocument, type PDFDocumentProxy, type PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { FACES } from '../../src/build/fonts.ts';
import { faceOf } from '../../src/cli/faces.ts';
import type { Block, Report } from '../../src/model/report.ts';
import { type PdfFonts, type PdfInfo, writePdf } from '../../src/writers/pdf/index.ts';
import { sampleReport } from './sample.ts';

const read = new Map<string, Uint8Array>();

/** A face as the build copies it into the product. */
function face(name: string): Uint8Array {
  let bytes = read.get(name);
  if (!bytes) {
    const [from] = FACES.find(([, to]) => to === name)!;
    bytes = readFileSync(new URL(`../../node_modules/${from}`, import.meta.url));
    read.set(name, bytes);
  }
  return bytes;
}

export const FONTS: PdfFonts = {
  regular: face('IBMPlexSans-Regular.ttf'),
  semibold: face('IBMPlexSans-SemiBold.ttf'),
  more: (script, strong) => face(faceOf(script, strong)),
};

export const write = (report: Report, info: Partial<PdfInfo> = {}): Promise<Uint8Array> =>
  writePdf(report, FONTS, { version: '9.9.9', ...info });

/** A report of one page with these blocks. */
export const pageOf = (blocks: Block[], over: Partial<Report> = {}): Report =>
  sampleReport({ pages: [{ id: 'page', title: 'Page', blocks }], ...over });

export interface Piece {
  text: string;
  x: number;
  y: number;
  width: number;
  size: number;
}

export interface Sheet {
  pieces: Piece[];
  text: string;
}

interface TreeNode {
  role: string;
  alt?: string;
  children: (TreeNode | { type: string; id: string })[];
}

/** A file as an independent reader sees it. */
export interface Opened {
  title: string | undefined;
  language: string | null;
  sheets: (Sheet & { tree: TreeNode })[];
  bookmarks: string[];
  /** Every element of the structure tree, in order. */
  elements: { role: string; alt?: string | undefined; depth: number; marks: number }[];
}

export const open = (bytes: Uint8Array): Promise<Opened> =>
  reading(bytes, async (pdf) => {
    const { info } = await pdf.getMetadata();
    const { Title, Language = null } = info as { Title?: string; Language?: string };
    const elements: Opened['elements'] = [];
    const walk = (node: TreeNode, depth: number): void => {
      // Elements of other sheets are listed too, without their content.
      const marks = node.children.filter((child) => 'id' in child).length;
      elements.push({ role: node.role, alt: node.alt, depth, marks });
      for (const child of node.children) if ('role' in child) walk(child, depth + 1);
    };
    const sheets: Opened['sheets'] = [];
    for (let i = 1; i <= pdf.numPages; i++) {
      const page = await pdf.getPage(i);
      const tree = await treeOf(page);
      for (const child of tree.children) if ('role' in child) walk(child, 0);
      sheets.push({ ...(await sheetOf(page)), tree });
    }
    const bookmarks = ((await pdf.getOutline()) ?? []).map((item) => item.title);
    return { title: Title, language: Language, sheets, bookmarks, elements };
  });

/** What stands on each sheet alone: half the work of opening all of a file. */
export const openSheets = (bytes: Uint8Array): Promise<{ sheets: Sheet[] }> =>
  reading(bytes, async (pdf) => {
    const sheets: Sheet[] = [];
    for (let i = 1; i <= pdf.numPages; i++) sheets.push(await sheetOf(await pdf.getPage(i)));
    return { sheets };
  });

async function reading<T>(bytes: Uint8Array, read: (pdf: PDFDocumentProxy) => Promise<T>): Promise<T> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0 });
  const found = await read(await task.promise);
  await task.destroy();
  return found;
}

async function sheetOf(page: PDFPageProxy): Promise<Sheet> {
  const { items } = await page.getTextContent();
  const pieces = items.flatMap((item): Piece[] =>
    'str' in item && item.str.trim()
      ? [
          {
            text: item.str,
            x: item.transform[4],
            y: item.transform[5],
            width: item.width,
            size: Math.hypot(item.transform[2], item.transform[3]),
          },
        ]
      : [],
  );
  const text = items.map((item) => ('str' in item ? item.str + (item.hasEOL ? '\n' : '') : '')).join('');
  return { pieces, text };
}

const treeOf = async (page: PDFPageProxy): Promise<TreeNode> => (await page.getStructTree()) as unknown as TreeNode;

/** Texts of the first sheet in the order of the structure tree, as a screen reader comes to them, each with the role it has. */
export const readAloud = (bytes: Uint8Array): Promise<{ role: string; text: string }[]> =>
  reading(bytes, async (pdf) => {
    const page = await pdf.getPage(1);
    const { items } = await page.getTextContent({ includeMarkedContent: true });
    const texts = new Map<string, string>();
    const open: string[] = [];
    for (const item of items) {
      const mark = open.at(-1) ?? '';
      if ('str' in item) texts.set(mark, `${texts.get(mark) ?? ''}${item.str}`);
      else if (item.type === 'endMarkedContent') open.pop();
      else open.push(item.id ?? '');
    }
    const walk = ({ role, children }: TreeNode): { role: string; text: string }[] =>
      children.flatMap((child) => ('role' in child ? walk(child) : [{ role, text: texts.get(child.id) ?? '' }]));
    return walk(await treeOf(page));
  });

/** The drawing operators of each sheet, inflated. */
export function operators(bytes: Uint8Array): string[] {
  const found: string[] = [];
  const raw = Buffer.from(bytes);
  for (let at = raw.indexOf('\nstream\n'); at >= 0; at = raw.indexOf('\nstream\n', at + 1)) {
    const head = raw.subarray(raw.lastIndexOf('obj', at), at).toString('latin1');
    if (!head.includes('FlateDecode')) continue;
    const text = inflateSync(raw.subarray(at + 8, raw.indexOf('\nendstream', at))).toString('latin1');
    if (text.startsWith('0.01 0 0 -0.01')) found.push(text);
  }
  return found;
}
