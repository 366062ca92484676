import { type Dict, type Objects, textOf, type Value } from './pdfObjects.ts';

/**
 * What speaks against a file being PDF/A-3a (ISO 19005-3; clauses from memory), as far as its objects can show. No validator is to be
 * had from the registries; an empty list is no proof of conformance. Tags, marks and fonts are looked at by `structureFaults`.
 */
export function archiveFaults(objects: Objects, bytes: Uint8Array): string[] {
  const { root, dict, list, pages, stream, trailer } = objects;
  const faults: string[] = [];
  const fault = (clause: string, text: string): void => void faults.push(`PDF/A ${clause}: ${text}`);

  const file = Buffer.from(bytes);
  const second = file.subarray(file.indexOf('\n') + 1);
  if (!/^%PDF-1\.[1-7]\n/.test(file.subarray(0, 9).toString('latin1'))) fault('6.1.2', 'the first line');
  if (second[0] !== 0x25 || [1, 2, 3, 4].some((i) => second[i]! < 128)) fault('6.1.2', 'no comment of high bytes');
  if (list(trailer['/ID']).length !== 2) fault('6.1.3', 'no identifier of the file');
  if (trailer['/Encrypt'] !== undefined) fault('6.1.3', 'encrypted');
  if (!/%%EOF\s?$/.test(file.subarray(-8).toString('latin1'))) fault('6.1.3', 'something after the end');

  const intents = list(root['/OutputIntents']).map(dict);
  const intent = intents.find((one) => one['/S'] === '/GTS_PDFA1');
  if (intents.length !== 1 || !intent) fault('6.2.3', 'not one output intent');
  else {
    const profile = stream(intent['/DestOutputProfile']);
    if (dict(intent['/DestOutputProfile'])['/N'] !== 3) fault('6.2.3', 'a profile of another number of colours');
    if (profile.toString('latin1', 36, 40) !== 'acsp' || profile.toString('latin1', 16, 20) !== 'RGB ')
      fault('6.2.3', 'no profile of RGB');
    if (profile.length < 128 || profile.readUInt32BE(0) !== profile.length || profile[8]! > 4)
      fault('6.2.3', 'a profile of another size');
    if (!textOf(intent['/OutputConditionIdentifier'])) fault('6.2.3', 'an intent without a name');
  }

  for (const name of ['/AA', '/OpenAction', '/OCProperties', '/AcroForm', '/Requirements'])
    if (root[name] !== undefined) fault('6.5, 6.9', `the catalogue has ${name}`);
  if (dict(root['/Names'])['/JavaScript'] !== undefined) fault('6.5.1', 'a script');
  pages.forEach(({ page }, i) => {
    if (page['/AA'] !== undefined) fault('6.5.2', `page ${i + 1} acts`);
    for (const one of list(page['/Annots']))
      if ((Number(dict(one)['/F'] ?? 0) & 4) === 0) fault('6.3.2', 'not printed');
    const resources = dict(page['/Resources']);
    for (const name of ['/ExtGState', '/XObject', '/Shading', '/Pattern'])
      if (Object.keys(dict(resources[name])).length > 0) fault('6.2', `page ${i + 1} uses ${name}`);
    const content = list(page['/Contents'])
      .map((part) => stream(part).toString('latin1'))
      .join('\n');
    // A profile of RGB speaks for RGB alone.
    if (/(?:^|\s)(?:[kK]|cs|CS|sc|SC|scn|SCN|gs|sh|Do|BI|ri)(?:\s|$)/m.test(withoutText(content)))
      fault('6.2.4', `page ${i + 1} uses a colour or state of another kind`);
    if (depthOf(content) > 28) fault('6.1.13', 'states nested deeper than 28');
  });

  metadata(objects, fault);
  attachments(objects, fault);
  return faults;
}

const withoutText = (content: string): string => content.replace(/<[0-9a-fA-F\s]*>|\((?:\\.|[^\\)])*\)/g, '');

function depthOf(content: string): number {
  let depth = 0;
  let most = 0;
  for (const [, operator] of withoutText(content).matchAll(/(?:^|\s)([qQ])(?=\s|$)/g)) {
    depth += operator === 'q' ? 1 : -1;
    most = Math.max(most, depth);
  }
  return most;
}

type Fault = (clause: string, text: string) => void;

/** The claim, nothing but properties that are described, and the same said in both places (6.6.2, 6.6.4). */
function metadata({ root, dict, stream, trailer, at }: Objects, fault: Fault): void {
  const packet = stream(root['/Metadata']).toString('utf8');
  const said = (name: string): string | undefined =>
    new RegExp(`<${name}>(?:\\s*<rdf:(?:Alt|Seq)>\\s*<rdf:li[^>]*>)?([^<]*)<`).exec(packet)?.[1];
  if (dict(root['/Metadata'])['/Subtype'] !== '/XML') fault('6.6.2.1', 'no packet of metadata');
  if (/<\?xpacket[^>]*(?:bytes|encoding)=/.test(packet)) fault('6.6.2.1', 'a packet with bytes or encoding');
  if (said('pdfaid:part') !== '3' || said('pdfaid:conformance') !== 'A') fault('6.6.4', 'no claim');
  const known = new Set([
    'rdf',
    'x',
    'dc',
    'xmp',
    'pdf',
    'pdfaid',
    'pdfaExtension',
    'pdfaSchema',
    'pdfaProperty',
    'xml',
  ]);
  const described = new Set([...packet.matchAll(/<pdfaSchema:prefix>([^<]+)</g)].map(([, prefix]) => prefix!));
  for (const [, prefix] of packet.matchAll(/<([A-Za-z]+):/g))
    if (!known.has(prefix!) && !described.has(prefix!)) fault('6.6.2.3', `${prefix} is not described`);
  const info = dict(trailer['/Info']);
  const written = (name: string): string | undefined => textOf(at(info[name]));
  const pairs: [string, string | undefined][] = [
    ['/Title', said('dc:title')],
    ['/Creator', said('xmp:CreatorTool')],
    ['/Producer', said('pdf:Producer')],
  ];
  for (const [name, other] of pairs)
    if (written(name) !== plain(other)) fault('6.6.3', `${name} is ${written(name)} and ${other}`);
  for (const [name, other] of [
    ['/CreationDate', said('xmp:CreateDate')],
    ['/ModDate', said('xmp:ModifyDate')],
  ] as const)
    if (digits(written(name)) !== digits(other)) fault('6.6.3', `${name} is not ${other}`);
}

const digits = (text: string | undefined): string => (text ?? '').replace(/\D/g, '');
const plain = (text: string | undefined): string | undefined =>
  text
    ?.replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&apos;', "'")
    .replaceAll('&amp;', '&');

/** What travels inside says what it is, of which type and when, and is named by the catalogue (6.8). */
function attachments({ root, dict, list, at }: Objects, fault: Fault): void {
  const files = namesIn(dict(dict(root['/Names'])['/EmbeddedFiles']), list, dict);
  const associated = new Set(list(root['/AF']).map(String));
  for (const ref of files) {
    const spec = dict(ref);
    if (!associated.has(String(ref))) fault('6.8', 'a file that is not associated');
    if (!/^\/(Source|Data|Alternative|Supplement|Unspecified)$/.test(String(spec['/AFRelationship'])))
      fault('6.8', 'a file without its relationship');
    if (!textOf(spec['/F']) || !textOf(spec['/UF'])) fault('6.8', 'a file without a name');
    const embedded = dict(dict(spec['/EF'])['/F']);
    if (!/^\/\w+\/\w+|^\/\w+#2f\w+/.test(String(embedded['/Subtype']))) fault('6.8', 'a file without a type');
    if (at(dict(embedded['/Params'])['/ModDate']) === null) fault('6.8', 'a file without a date');
  }
}

function namesIn(tree: Dict, list: Objects['list'], dict: Objects['dict']): Value[] {
  const own = list(tree['/Names']).filter((_, i) => i % 2 === 1);
  return [...own, ...list(tree['/Kids']).flatMap((kid) => namesIn(dict(kid), list, dict))];
}
