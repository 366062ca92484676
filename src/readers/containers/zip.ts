import { inflate } from '../../bytes/pack.ts';
import { utf8 } from '../../bytes/text.ts';
import type { Input } from '../../model/input.ts';

/** Bounds against archives made to burst: files, bytes of one, bytes of all (ours). */
export const BOUNDS = { files: 500, one: 256 * 1024 * 1024, all: 512 * 1024 * 1024 } as const;

export interface Packed {
  name: string;
  bytes: Uint8Array;
}

export type Unzipped =
  | { ok: true; files: Packed[]; workbook: boolean }
  | { ok: false; why: 'damaged' | 'too-large' | 'locked' };

/** By its first entry, or by the mark of one that was split and then was not (PKWARE APPNOTE 4.3.7, 8.5.3). */
export const isZip = ([p, k, a, b]: Uint8Array): boolean =>
  p === 0x50 && k === 0x4b && ((a === 3 && b === 4) || (a === 7 && b === 8));

/** What an archive holds, as inputs with its name before theirs. */
export const inside = (input: Input, files: Packed[]): Input[] =>
  files.map(({ name, bytes }) => ({ name: `${input.name}/${name}`, bytes }));

const END = 0x06054b50;
const ENTRY = 0x02014b50;
const LOCAL = 0x04034b50;

/**
 * Unpacks a ZIP archive (PKWARE APPNOTE: stored and deflated entries, no Zip64) by its central directory. Sizes
 * claimed are only limits for what is unpacked; nothing touches the disk, so names cannot lead anywhere.
 */
export function unzip(bytes: Uint8Array): Unzipped {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let end = -1;
  for (let i = bytes.length - 22; i >= 0 && i >= bytes.length - 65_557; i--) {
    if (view.getUint32(i, true) === END) {
      end = i;
      break;
    }
  }
  if (end < 0) return { ok: false, why: 'damaged' };
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  if (count > BOUNDS.files) return { ok: false, why: 'too-large' };
  const files: Packed[] = [];
  let total = 0;
  let workbook = false;
  try {
    for (let n = 0; n < count; n++) {
      if (view.getUint32(at, true) !== ENTRY) return { ok: false, why: 'damaged' };
      const flags = view.getUint16(at + 8, true);
      const method = view.getUint16(at + 10, true);
      const packedSize = view.getUint32(at + 20, true);
      const size = view.getUint32(at + 24, true);
      const nameLength = view.getUint16(at + 28, true);
      const local = view.getUint32(at + 42, true);
      const name = utf8(bytes, at + 46, at + 46 + nameLength);
      at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
      if (name.endsWith('/') || name.startsWith('__MACOSX/') || /(?:^|\/)\.[^/]*$/.test(name)) continue;
      if (name === '[Content_Types].xml' || name.startsWith('xl/') || name === 'content.xml') workbook = true;
      if (flags & 1) return { ok: false, why: 'locked' };
      total += size;
      if (size > BOUNDS.one || total > BOUNDS.all) return { ok: false, why: 'too-large' };
      if (view.getUint32(local, true) !== LOCAL) return { ok: false, why: 'damaged' };
      const from = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
      const packed = bytes.subarray(from, from + packedSize);
      if (packed.length !== packedSize || (method !== 0 && method !== 8)) return { ok: false, why: 'damaged' };
      const unpacked = method === 0 ? { ok: true as const, bytes: packed } : inflate(packed, size);
      if (!unpacked.ok || unpacked.bytes.length !== size) return { ok: false, why: 'damaged' };
      files.push({ name, bytes: unpacked.bytes });
    }
  } catch {
    return { ok: false, why: 'damaged' };
  }
  return { ok: true, files, workbook };
}
