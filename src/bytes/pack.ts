import { Gunzip, Inflate, Zip, ZipDeflate, zipSync, zlibSync } from 'fflate';

/** Packed bytes given at a time, so that what is made to burst is met before it has grown (64 kB become 66 MB at most). */
const PIECE = 65_536;

/** Unpacked bytes, or why there are none. */
export type Unpacked = { ok: true; bytes: Uint8Array } | { ok: false; why: 'damaged' | 'too-large' };

/** Packs bytes as PDF wants them (zlib, RFC 1950), at a level from 1 to 9. */
export type Deflate = (bytes: Uint8Array, level?: Level) => Uint8Array;
type Level = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9;

export const deflate: Deflate = (bytes, level = 6) => zlibSync(bytes, { level });

const SAME_DAY = new Date(1980, 0, 1);

/** One archive of files by name, each with the same date, so that the same files give the same archive; at level 0 nothing is packed. */
export const zip = (files: readonly { name: string; bytes: Uint8Array }[], level: 0 | 6 = 6): Uint8Array =>
  zipSync(Object.fromEntries(files.map(({ name, bytes }) => [name, bytes])), { mtime: SAME_DAY, level });

/** An archive that is made file by file: what is ready of it is handed out each time, so that it never stands in memory as a whole. */
export function openZip() {
  const pieces: Uint8Array[] = [];
  const archive = new Zip((_, piece) => {
    pieces.push(piece);
  });
  const ready = (): Uint8Array => {
    const all = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
    let at = 0;
    for (const piece of pieces.splice(0)) {
      all.set(piece, at);
      at += piece.length;
    }
    return all;
  };
  return {
    add(name: string, bytes: Uint8Array): void {
      // What a PDF holds is packed already.
      const file = new ZipDeflate(name, { level: /\.pdf$/i.test(name) ? 0 : 6 });
      file.mtime = SAME_DAY;
      archive.add(file);
      file.push(bytes, true);
    },
    ready,
    end(): Uint8Array {
      archive.end();
      return ready();
    },
  };
}

/** Unpacks raw deflated bytes (RFC 1951) up to a size. */
export function inflate(packed: Uint8Array, most: number): Unpacked {
  const output = gather(most);
  return output.from(packed, new Inflate(output.add)) ?? output.all();
}

/** Unpacks a gzip file (RFC 1952), also one of several members, and checks each against its sum. */
export function gunzip(packed: Uint8Array, most: number): Unpacked {
  const output = gather(most);
  const view = new DataView(packed.buffer, packed.byteOffset, packed.byteLength);
  let whole = packed.length >= 18;
  let member = 0;
  const closeMember = (end: number): void => {
    const bytes = output.since(member);
    if (end < 8 || view.getUint32(end - 8, true) !== crc32(bytes) || view.getUint32(end - 4, true) !== bytes.length)
      whole = false;
    member = output.count();
  };
  const stream = new Gunzip(output.add);
  stream.onmember = closeMember;
  const failed = output.from(packed, stream);
  if (failed) return failed;
  closeMember(packed.length);
  return whole ? output.all() : { ok: false, why: 'damaged' };
}

interface Stream {
  push(chunk: Uint8Array, final?: boolean): void;
}

function gather(most: number) {
  const pieces: Uint8Array[] = [];
  let length = 0;
  const since = (from: number): Uint8Array => {
    const bytes = new Uint8Array(pieces.slice(from).reduce((sum, piece) => sum + piece.length, 0));
    let at = 0;
    for (const piece of pieces.slice(from)) {
      bytes.set(piece, at);
      at += piece.length;
    }
    return bytes;
  };
  return {
    add(piece: Uint8Array): void {
      length += piece.length;
      if (length <= most) pieces.push(piece);
    },
    count: (): number => pieces.length,
    since,
    all: (): Unpacked => ({ ok: true, bytes: since(0) }),
    /** Undefined when all went well. */
    from(packed: Uint8Array, stream: Stream): Unpacked | undefined {
      try {
        for (let at = 0; at < packed.length || at === 0; at += PIECE) {
          stream.push(packed.subarray(at, at + PIECE), at + PIECE >= packed.length);
          if (length > most) return { ok: false, why: 'too-large' };
        }
      } catch {
        return { ok: false, why: 'damaged' };
      }
      return undefined;
    },
  };
}

const CRC = Uint32Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  return sum;
});

function crc32(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (let i = 0; i < bytes.length; i++) sum = CRC[(sum ^ bytes[i]!) & 255]! ^ (sum >>> 8);
  return (sum ^ 0xffffffff) >>> 0;
}
