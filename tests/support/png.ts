import { deflateSync } from 'node:zlib';

/** An image of 8-bit red, green, blue. */
export interface Image {
  width: number;
  height: number;
  data: Uint8Array;
}

/** Reads a portable pixmap (P6), as pdftoppm writes it. */
export function readPixmap(bytes: Uint8Array): Image {
  const head = /^P6\s+(\d+)\s+(\d+)\s+255\s/.exec(Buffer.from(bytes.subarray(0, 40)).toString('latin1'));
  if (!head) throw new Error('not a portable pixmap');
  return { width: Number(head[1]), height: Number(head[2]), data: bytes.subarray(head[0].length) };
}

const crcTable = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});

function chunk(name: string, data: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  let crc = 0xffffffff;
  for (const byte of body) crc = crcTable[(crc ^ byte) & 0xff]! ^ (crc >>> 8);
  const framed = Buffer.alloc(body.length + 8);
  framed.writeUInt32BE(data.length);
  framed.set(body, 4);
  framed.writeUInt32BE((crc ^ 0xffffffff) >>> 0, body.length + 4);
  return framed;
}

/** A PNG (ISO/IEC 15948), each row told by its difference from the row above: flat pages come out small. */
export function writePng({ width, height, data }: Image): Buffer {
  const stride = width * 3;
  const rows = Buffer.alloc(height * (stride + 1));
  for (let y = 0; y < height; y++) {
    rows[y * (stride + 1)] = 2;
    for (let i = 0; i < stride; i++) {
      const above = y === 0 ? 0 : data[(y - 1) * stride + i]!;
      rows[y * (stride + 1) + 1 + i] = data[y * stride + i]! - above;
    }
  }
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width);
  head.writeUInt32BE(height, 4);
  head.set([8, 2, 0, 0, 0], 8);
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  const packed = deflateSync(rows, { level: 9 });
  return Buffer.concat([signature, chunk('IHDR', head), chunk('IDAT', packed), chunk('IEND', new Uint8Array())]);
}
