import { inflateSync } from 'node:zlib';

/**
 * A PDF with every packed part unpacked, and without what only tells how long packed parts are: lengths and the table of
 * places. Two files that differ in their packer alone are equal.
 */
export function unpacked(pdf: Uint8Array): string {
  const text = Buffer.from(pdf).toString('latin1');
  return text
    .slice(0, text.lastIndexOf('\nxref\n'))
    .replace(/\/Length \d+/g, '/Length')
    .replace(/(\nstream\r?\n)([\s\S]*?)(\nendstream)/g, (_, open: string, body: string, end: string) => {
      const packed = body.startsWith('x');
      return `${open}${packed ? inflateSync(Buffer.from(body, 'latin1')).toString('latin1') : body}${end}`;
    });
}
