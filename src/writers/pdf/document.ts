import PDFDocument from 'pdfkit';
import type { Face } from './face.ts';

/** A page description object of the file, as pdfkit hands it out. */
export interface Ref {
  data: Record<string, unknown>;
  write(chunk: Uint8Array): void;
  end(): void;
}

/** pdfkit's font of one document: a subset that grows as words are encoded. */
export interface DocumentFont {
  id: string;
  layoutCache: Record<string, unknown>;
  ref(): Ref;
  widthOfString(text: string, size: number): number;
  encode(text: string): [hex: string[], positions: { xAdvance: number; advanceWidth: number; xOffset: number }[]];
}

export interface PdfPage {
  content: Ref;
  dictionary: Ref;
  fonts: Record<string, Ref>;
  structParentTreeKey: number;
}

/** The parts of pdfkit used here that its type package does not know, or keeps private. All casts live in this file. */
export interface Pdf {
  page: PdfPage;
  outline: { addItem(title: string, options: { pageNumber: number; fit: true }): unknown };
  addPage(): void;
  ref(data: Record<string, unknown>): Ref;
  font(face: Face['font']): void;
  getStructTreeRoot(): Ref;
  getStructParentTree(): { get(key: number): Ref[] };
  on(event: 'data', listener: (chunk: Uint8Array) => void): void;
  on(event: 'end', listener: () => void): void;
  on(event: 'error', listener: (error: Error) => void): void;
  end(): void;
  /** Private in pdfkit: the font last set. */
  _font: DocumentFont | null;
  /** Private in pdfkit: writes the XMP packet from `info`. */
  _addInfo(): void;
  info: Record<string, unknown>;
}

export interface Head {
  title: string;
  language: string;
  size: [width: number, height: number];
  /** YYYY-MM-DD; the only date in the file. */
  printed: string;
  producer: string;
}

export function openPdf(head: Head): Pdf {
  const date = new Date(`${head.printed}T00:00:00Z`);
  const options = {
    size: head.size,
    margin: 0,
    // No default face: pdfkit would otherwise load Helvetica's metrics.
    font: null,
    autoFirstPage: false,
    bufferPages: true,
    pdfVersion: '1.7',
    tagged: true,
    displayTitle: true,
    lang: head.language,
    info: {
      Title: head.title,
      Creator: head.producer,
      Producer: head.producer,
      CreationDate: date,
      ModDate: date,
    },
  };
  const pdf = new PDFDocument(options as unknown as PDFKit.PDFDocumentOptions) as unknown as Pdf;
  escapeMetadata(pdf);
  return pdf;
}

const XML: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** pdfkit 0.20 puts the title into its XML packet as it is; `A & B` would break the packet. */
function escapeMetadata(pdf: Pdf): void {
  const write = pdf._addInfo;
  pdf._addInfo = () => {
    const plain = pdf.info;
    pdf.info = Object.fromEntries(
      Object.entries(plain).map(([key, value]) => [
        key,
        typeof value === 'string' ? value.replace(/[&<>"]/g, (c) => XML[c]!) : value,
      ]),
    );
    write.call(pdf);
    pdf.info = plain;
  };
}

/** Adds a face to a document, sharing the layouts of earlier documents. */
export function useFace(pdf: Pdf, face: Face): DocumentFont {
  pdf.font(face.font);
  const font = pdf._font;
  if (!font?.layoutCache) throw new Error('pdfkit no longer keeps its word layouts where this version expects them');
  font.layoutCache = face.layouts;
  return font;
}

export function bytesOf(pdf: Pdf): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    pdf.on('data', (chunk) => chunks.push(chunk));
    pdf.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))));
    pdf.on('error', reject);
    pdf.end();
  });
}
