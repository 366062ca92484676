import { isUtf8 as nodeIsUtf8 } from 'node:buffer';
import { createHash } from 'node:crypto';
import { deflateRawSync, gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fingerprint, hex, sha1 } from '../../src/bytes/hash.ts';
import { gunzip, inflate } from '../../src/bytes/pack.ts';
import { bytesOf, find, growingText, isUtf8, latin1, utf8 } from '../../src/bytes/text.ts';
import { ownHash } from '../../src/cli/ownHash.ts';

const text = fc.string({ unit: 'grapheme', maxLength: 60 });
// Bytes that look like beginnings and middles of letters, which chance alone seldom gives.
const odd = fc.array(
  fc.constantFrom(0x41, 0x80, 0xbf, 0xc0, 0xc3, 0xe0, 0xa0, 0xed, 0x9f, 0xef, 0xf0, 0x90, 0xf4, 0xff),
  {
    maxLength: 40,
  },
);
const bytes = fc.oneof(
  fc.uint8Array({ maxLength: 60 }),
  odd.map((list) => Uint8Array.from(list)),
  text.map(bytesOf),
);

describe('text of bytes is what the engine that we know makes of it', () => {
  test('UTF-8 and single bytes, whole and in part', () => {
    fc.assert(
      fc.property(bytes, fc.nat(60), fc.nat(60), (all, a, b) => {
        const from = Math.min(a, all.length);
        const to = Math.min(Math.max(from, b), all.length);
        expect(utf8(all, from, to)).toBe(Buffer.from(all).toString('utf8', from, to));
        expect(latin1(all, from, to)).toBe(Buffer.from(all).toString('latin1', from, to));
        expect(isUtf8(all)).toBe(nodeIsUtf8(all));
      }),
      { numRuns: 2000 },
    );
  });

  test('long text is put together without a gap', () => {
    const long = Uint8Array.from({ length: 20_000 }, (_, i) => i & 255);
    expect(latin1(long)).toBe(Buffer.from(long).toString('latin1'));
  });

  test('a text is found where it stands', () => {
    fc.assert(
      fc.property(text, text, text, fc.nat(10), (before, wanted, behind, from) => {
        fc.pre(wanted !== '');
        const all = bytesOf(before + wanted + behind);
        expect(find(all, wanted, from)).toBe(Buffer.from(all).indexOf(wanted, from));
      }),
    );
  });

  test('a text grows as its parts', () => {
    fc.assert(
      fc.property(fc.array(text), (parts) => {
        const grown = growingText();
        for (const part of parts) grown.add(part);
        grown.add('é'.repeat(50_000));
        expect(Buffer.from(grown.bytes()).equals(Buffer.from(`${parts.join('')}${'é'.repeat(50_000)}`))).toBe(true);
      }),
      { numRuns: 20 },
    );
  });
});

test('hashes are those of the standards', () => {
  // FIPS 180-4, examples of the "abc" message (csrc.nist.gov, Cryptographic Standards and Guidelines, examples with values).
  expect(fingerprint('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  expect(hex(sha1('abc'))).toBe('a9993e364706816aba3e25717850c26c9cd0d89d');
  // The same with ours and with what the command hands in.
  const known = (): void =>
    fc.assert(
      fc.property(bytes, (all) => fingerprint(all) === createHash('sha256').update(all).digest('hex')),
      { numRuns: 50 },
    );
  known();
  ownHash();
  known();
});

describe('unpacking', () => {
  const content = Uint8Array.from({ length: 300_000 }, (_, i) => (i * i) >> 7);

  test('gives what was packed, also in several members', () => {
    expect(inflate(deflateRawSync(content), content.length)).toEqual({ ok: true, bytes: content });
    const two = Buffer.concat([gzipSync(content), gzipSync('more')]);
    const all = gunzip(two, 1_000_000);
    expect(all.ok && Buffer.from(all.bytes).equals(Buffer.concat([content, Buffer.from('more')]))).toBe(true);
    expect(gunzip(gzipSync(''), 10)).toEqual({ ok: true, bytes: new Uint8Array(0) });
  });

  test('stops at a bound', () => {
    expect(inflate(deflateRawSync(content), content.length - 1)).toEqual({ ok: false, why: 'too-large' });
    expect(gunzip(gzipSync(content), 1000)).toEqual({ ok: false, why: 'too-large' });
  });

  test('tells what is cut off or changed', () => {
    const packed = gzipSync(content);
    for (const length of [0, 5, 12, 100, packed.length - 9, packed.length - 1])
      expect(gunzip(packed.subarray(0, length), 1_000_000), String(length)).toEqual({ ok: false, why: 'damaged' });
    const changed = Uint8Array.from(gzipSync('a text of few letters', { level: 0 }));
    changed[changed.length - 12]! ^= 1;
    expect(gunzip(changed, 1000)).toEqual({ ok: false, why: 'damaged' });
    const raw = deflateRawSync(content);
    expect(inflate(raw.subarray(0, raw.length - 40), content.length)).toEqual({ ok: false, why: 'damaged' });
  });
});
