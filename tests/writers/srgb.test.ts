import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { srgbProfile } from '../../src/writers/pdf/srgb.ts';

/** Tags of a profile (ICC.1:2001-04, 7.3), as bytes. */
function tagsOf(profile: Buffer): Map<string, Buffer> {
  const tags = new Map<string, Buffer>();
  for (let i = 0; i < profile.readUInt32BE(128); i++) {
    const at = 132 + 12 * i;
    const start = profile.readUInt32BE(at + 4);
    tags.set(profile.toString('latin1', at, at + 4), profile.subarray(start, start + profile.readUInt32BE(at + 8)));
  }
  return tags;
}

const xyz = (tag: Buffer): number[] => [8, 12, 16].map((at) => tag.readInt32BE(at) / 65536);
/** A curve at a value between 0 and 1. */
function curveAt(tag: Buffer, value: number): number {
  const last = tag.readUInt32BE(8) - 1;
  const entry = (i: number): number => tag.readUInt16BE(12 + 2 * i) / 65535;
  const at = value * last;
  const low = Math.floor(at);
  return entry(low) + (at - low) * (entry(Math.min(last, low + 1)) - entry(low));
}

// The profile that the PDF library brings along was made by others from the same standard.
const library = dirname(createRequire(import.meta.url).resolve('pdfkit'));
const others = tagsOf(readFileSync(join(library, 'data/sRGB_IEC61966_2_1.icc')));
const profile = Buffer.from(srgbProfile());
const own = tagsOf(profile);

describe('the profile of the colours', () => {
  test('says what it is', () => {
    expect(profile.readUInt32BE(0)).toBe(profile.length);
    expect(profile.toString('latin1', 12, 24)).toBe('mntrRGB XYZ ');
    expect(profile.toString('latin1', 36, 40)).toBe('acsp');
    expect(profile.length).toBeLessThan(1200);
    expect([...own.keys()]).toEqual(['desc', 'cprt', 'wtpt', 'rXYZ', 'gXYZ', 'bXYZ', 'rTRC', 'gTRC', 'bTRC']);
  });

  test.each(['rXYZ', 'gXYZ', 'bXYZ'])('%s is that of the standard', (name) => {
    xyz(own.get(name)!).forEach((value, i) => {
      expect(value).toBeCloseTo(xyz(others.get(name)!)[i]!, 3);
    });
  });

  test('red, green and blue make the white of D50', () => {
    const sum = [0, 1, 2].map((i) => ['rXYZ', 'gXYZ', 'bXYZ'].reduce((all, name) => all + xyz(own.get(name)!)[i]!, 0));
    [0.9642, 1, 0.8249].forEach((value, i) => {
      expect(sum[i]).toBeCloseTo(value, 3);
    });
  });

  test('its curve is that of the standard', () => {
    for (let value = 0; value <= 1; value += 0.01)
      expect(Math.abs(curveAt(own.get('gTRC')!, value) - curveAt(others.get('gTRC')!, value))).toBeLessThan(0.001);
  });
});
