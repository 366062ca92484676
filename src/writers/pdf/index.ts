import { deflate } from '../../bytes/pack.ts';
import { CONTENT_WIDTH } from '../../charts/frame.ts';
import type { Report } from '../../model/report.ts';
import { COLOUR, GREY } from '../palette.ts';
import { attach, bytesOf, openPdf, type Pdf } from './document.ts';
import { fitted } from './fitted.ts';
import { copyfit } from './flow.ts';
import { headingDepths } from './headings.ts';
import type { PdfFonts, PdfInfo } from './info.ts';
import { fillPage } from './patches.ts';
import { scaleOf } from './scale.ts';
import type { Setting } from './setting.ts';
import { Sheet } from './sheet.ts';
import { contentHeight, drawStanding, FRAME_HEIGHT, headerHeight } from './standing.ts';
import { node, writeTree } from './tree.ts';
import { openTypeface } from './typeface.ts';
import { clean } from './words.ts';

export { type BroughtFace, broughtFaces, lettersWithout, openBroughtFace } from './coverage.ts';
export { usualCut } from './documentFont.ts';
export type { Attachment, Cuts, PdfFonts, PdfInfo } from './info.ts';
export type { Script } from './scripts.ts';

const PAPERS: Record<Report['paper'], [width: number, height: number]> = { a4: [595.28, 841.89], letter: [612, 792] };

/** Everything of a report measured, nothing of it drawn yet. */
function measured(report: Report, fonts: PdfFonts, info: PdfInfo) {
  const size = PAPERS[report.paper];
  const pdf = openPdf({
    title: clean(report.tab),
    language: report.language,
    size,
    printed: report.printed,
    producer: `Daybands ${info.version}`,
    password: info.password,
    deflate: info.deflate ?? deflate,
  });
  const root = node('Document');
  const scale = scaleOf(report);
  const capacity = contentHeight(scale);
  const setting: Omit<Setting, 'depth'> = {
    scale,
    palette: info.grey ? GREY : COLOUR,
    faces: {
      regular: openTypeface(pdf, fonts, 'regular', report.direction, info.cuts),
      semibold: openTypeface(pdf, fonts, 'semibold', report.direction, info.cuts),
    },
    capacity,
    parent: root,
  };
  const depths = headingDepths(report.pages);
  const pages = report.pages.map((page, i) => {
    const { flow, blocks } = fitted(page.blocks, CONTENT_WIDTH, { ...setting, depth: depths[i]! });
    return { ...page, blocks, flow };
  });
  return { pdf, root, size, setting, pages };
}

/** The report with each block that has several forms in the one that stands on paper: for a page that prints on the same sides. */
export function asPrinted(report: Report, fonts: PdfFonts, info: PdfInfo): Report {
  const { pages } = measured(report, fonts, info);
  return { ...report, pages: pages.map(({ flow: _, ...page }) => page) };
}

/**
 * Sets a report on paper. Same report, fonts and version, same bytes, unless locked. Throws when a chart holds a coordinate that is
 * not a number; nothing in a text can make it throw.
 */
export async function writePdf(report: Report, fonts: PdfFonts, info: PdfInfo): Promise<Uint8Array> {
  // Measured first: "page 1 of 9" needs the 9.
  const { pdf, root, size, setting, pages: measuredPages } = measured(report, fonts, info);
  const { scale, capacity } = setting;
  const pages = measuredPages.map(({ title, flow }) => ({ title: clean(title), ...copyfit(flow.strips, capacity) }));
  const count = Math.max(
    1,
    pages.reduce((sum, page) => sum + page.sheets, 0),
  );

  // The text column is centred; on A4 half a point to the right, for the full 20 mm of binding edge.
  const x = Math.ceil((size[0] - CONTENT_WIDTH) / 2);
  const y = (size[1] - FRAME_HEIGHT) / 2;
  const sheets = Array.from({ length: count }, (_, i) => new Sheet(i, size[1]));
  sheets.forEach((sheet, i) => {
    drawStanding(report, sheet, x, y, i + 1, count, setting, i === 0 ? root : undefined);
  });
  let first = 0;
  const bookmarks: { title: string; pageNumber: number }[] = [];
  for (const page of pages) {
    bookmarks.push({ title: page.title, pageNumber: first });
    for (const { strip, sheet, y: top } of page.placed)
      strip.draw(sheets[first + sheet]!, x, y + headerHeight(scale) + top);
    first += page.sheets;
  }
  const written = sheets.map((sheet) => addSheet(pdf, sheet));
  writeTree(pdf, root, written);
  if (info.attachment) attach(pdf, info.attachment, report.printed);
  for (const { title, pageNumber } of bookmarks) pdf.outline.addItem(title, { pageNumber, fit: true });
  return bytesOf(pdf);
}

function addSheet(pdf: Pdf, sheet: Sheet) {
  pdf.addPage();
  const { page } = pdf;
  const treeKey = page.structParentTreeKey;
  for (const font of sheet.fonts) page.fonts[font.id] ??= font.ref();
  fillPage(page, sheet.finish(), pdf.deflate);
  return { page: page.dictionary, treeKey, marks: sheet.marks };
}
