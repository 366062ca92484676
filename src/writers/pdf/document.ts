import type { Deflate } from '../../bytes/pack.ts';
import { once } from '../../once.ts';
import type { Bytes } from './bytes.ts';
import type { DocumentFont } from './documentFont.ts';
import type { Face } from './face.ts';
import type { Attachment } from './info.ts';
import { DirectPdf, escapeMetadata } from './patches.ts';
import { srgbProfile } from './srgb.ts';

/** A page description object of the file, as pdfkit hands it out. */
export interface Ref {
  data: Record<string, unknown>;
  /** Whether what is written will be packed. */
  compress: boolean;
  write(chunk: Uint8Array): void;
  end(): void;
}

export interface PdfPage {
  content: Ref & { buffer: Uint8Array[] };
  dictionary: Ref;
  fonts: Record<string, Ref>;
  structParentTreeKey: number;
}

/** The parts of pdfkit used here that its type package does not know, or keeps private; what of it is replaced stands in `patches.ts`. */
export interface Pdf {
  page: PdfPage;
  outline: { addItem(title: string, options: { pageNumber: number; fit: true }): unknown };
  addPage(): void;
  appendXML(xml: string): void;
  file(bytes: Uint8Array, options: Record<string, unknown>): unknown;
  ref(data: Record<string, unknown>): Ref;
  font(face: Face['font']): void;
  getStructTreeRoot(): Ref;
  getStructParentTree(): { get(key: number): Ref[] };
  end(): void;
  /** Private in pdfkit: appends to the file; a string is a line of it. */
  _write(data: Uint8Array | string): void;
  /** Private in pdfkit: bytes written so far, which the file's table of objects is made from. */
  _offset: number;
  /** Private in pdfkit: the file's catalogue. */
  _root: Ref;
  /** Private in pdfkit: the font last set. */
  _font: DocumentFont | null;
  /** Private in pdfkit: writes the XMP packet from `info`. */
  _addInfo(): void;
  info: Record<string, unknown>;
  /** Ours: what is written so far. */
  written: Bytes;
  /** Ours: packs pages and faces. */
  deflate: Deflate;
}

export interface Head {
  title: string;
  language: string;
  size: [width: number, height: number];
  /** YYYY-MM-DD; the only date in the file. */
  printed: string;
  producer: string;
  /** Whoever opens the file must know it. */
  password?: string | undefined;
  deflate: Deflate;
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
    // The extension level says AES with 256 bits; without a password the file is plain PDF 1.7.
    pdfVersion: head.password === undefined ? '1.7' : '1.7ext3',
    ...(head.password === undefined ? {} : { userPassword: head.password, permissions: LOCKED }),
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
  const pdf = new DirectPdf(options);
  pdf.deflate = head.deflate;
  escapeMetadata(pdf);
  pdf.appendXML(ACCESSIBLE);
  // An archive takes no file that may one day not be opened.
  if (head.password === undefined) claimArchive(pdf, head);
  return pdf;
}

/** Whoever may open the file may print it, copy from it and have it read aloud. */
const LOCKED = { printing: 'highResolution', copying: true, contentAccessibility: true };

/** The claim of ISO 14289-1 (PDF/UA-1), as that standard wants it in the metadata. */
const ACCESSIBLE = `
        <rdf:Description xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/" rdf:about="">
            <pdfuaid:part>1</pdfuaid:part>
        </rdf:Description>
        `;

/**
 * The claim of ISO 19005-3 (PDF/A-3, level a: with the tree that readers walk), what it wants said of the metadata that no other
 * standard names, and the profile of the file's colours.
 */
function claimArchive(pdf: Pdf, { printed, deflate }: Head): void {
  pdf.appendXML(ARCHIVAL);
  pdf.appendXML(`
        <rdf:Description xmlns:xmp="http://ns.adobe.com/xap/1.0/" rdf:about="">
            <xmp:ModifyDate>${printed}T00:00:00Z</xmp:ModifyDate>
        </rdf:Description>
        `);
  const profile = pdf.ref({ N: 3 });
  profile.compress = false;
  profile.data.Filter = 'FlateDecode';
  profile.write(packedProfile(deflate));
  profile.end();
  const name = new String('sRGB IEC61966-2.1');
  const intent = pdf.ref({
    Type: 'OutputIntent',
    S: 'GTS_PDFA1',
    Info: name,
    OutputConditionIdentifier: name,
    DestOutputProfile: profile,
  });
  intent.end();
  pdf._root.data.OutputIntents = [intent];
}

/** Packed once for each packer. */
const packedProfile = once((deflate: Deflate) => deflate(srgbProfile()));

const ARCHIVAL = `
        <rdf:Description xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/" rdf:about="">
            <pdfaid:part>3</pdfaid:part>
            <pdfaid:conformance>A</pdfaid:conformance>
        </rdf:Description>
        <rdf:Description xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/" xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#" xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#" rdf:about="">
            <pdfaExtension:schemas>
                <rdf:Bag>
                    <rdf:li rdf:parseType="Resource">
                        <pdfaSchema:schema>PDF/UA identification schema</pdfaSchema:schema>
                        <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
                        <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
                        <pdfaSchema:property>
                            <rdf:Seq>
                                <rdf:li rdf:parseType="Resource">
                                    <pdfaProperty:name>part</pdfaProperty:name>
                                    <pdfaProperty:valueType>Integer</pdfaProperty:valueType>
                                    <pdfaProperty:category>internal</pdfaProperty:category>
                                    <pdfaProperty:description>Part of ISO 14289 that the file follows</pdfaProperty:description>
                                </rdf:li>
                            </rdf:Seq>
                        </pdfaSchema:property>
                    </rdf:li>
                </rdf:Bag>
            </pdfaExtension:schemas>
        </rdf:Description>
        `;

/** Puts a file into the document as an associated file; its dates are the document's one date. */
export function attach(pdf: Pdf, { name, bytes, type, description }: Attachment, printed: string): void {
  const date = new Date(`${printed}T00:00:00Z`);
  pdf.file(bytes, { name, type, description, relationship: 'Data', creationDate: date, modifiedDate: date });
}

/** Ends the document. */
export function bytesOf(pdf: Pdf): Uint8Array {
  pdf.end();
  return new Uint8Array(pdf.written.done());
}
