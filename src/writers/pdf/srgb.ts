import { once } from '../../once.ts';
import { pow } from '../../stats/elementary.ts';

/** Steps of the curve from a number in the file to light. */
const STEPS = 256;

/** Light of a red, green or blue between 0 and 1 (IEC 61966-2-1, 5.2). */
const light = (value: number): number => (value <= 0.04045 ? value / 12.92 : pow((value + 0.055) / 1.055, 2.4));

/** White of the profile's connection space, D50 (ICC.1, annex D), and the three colours of IEC 61966-2-1 adapted to it. */
const D50 = [0.9642, 1, 0.8249] as const;
const COLOURS = {
  rXYZ: [0.43607, 0.22249, 0.01392],
  gXYZ: [0.38515, 0.71687, 0.09708],
  bXYZ: [0.14307, 0.06061, 0.7141],
} as const;

const NAME = 'sRGB IEC61966-2.1';

/**
 * A profile of the colours that screens share, as ICC.1:2001-04 (version 2.1) writes it: what an archive needs to show the
 * colours of a file in many years. 950 bytes.
 */
export const srgbProfile = once((): Uint8Array => {
  const curve = element('curv', 4 + STEPS * 2, (view) => {
    view.setUint32(8, STEPS);
    for (let i = 0; i < STEPS; i++) view.setUint16(12 + 2 * i, Math.round(65535 * light(i / (STEPS - 1))));
  });
  const tags: [string, Uint8Array][] = [
    ['desc', described(NAME)],
    ['cprt', element('text', 14, (view) => writeText(view, 8, 'Public domain'))],
    ['wtpt', colour(D50)],
    ...Object.entries(COLOURS).map(([name, xyz]): [string, Uint8Array] => [name, colour(xyz)]),
    ['rTRC', curve],
    ['gTRC', curve],
    ['bTRC', curve],
  ];
  const parts = [...new Set(tags.map(([, part]) => part))];
  const table = 128 + 4 + tags.length * 12;
  const starts = new Map<Uint8Array, number>();
  let end = table;
  for (const part of parts) {
    starts.set(part, end);
    end += padded(part.length);
  }
  const profile = new Uint8Array(end);
  const view = new DataView(profile.buffer);
  view.setUint32(0, end);
  view.setUint32(8, 0x02100000);
  writeText(view, 12, 'mntrRGB XYZ ');
  for (const [i, value] of [2026, 1, 1].entries()) view.setUint16(24 + 2 * i, value);
  writeText(view, 36, 'acsp');
  writeXyz(view, 68, D50);
  view.setUint32(128, tags.length);
  tags.forEach(([name, part], i) => {
    const at = 132 + 12 * i;
    writeText(view, at, name);
    view.setUint32(at + 4, starts.get(part)!);
    view.setUint32(at + 8, part.length);
  });
  for (const [part, start] of starts) profile.set(part, start);
  return profile;
});

const padded = (length: number): number => Math.ceil(length / 4) * 4;

function element(type: string, size: number, fill: (view: DataView) => void): Uint8Array {
  const bytes = new Uint8Array(8 + size);
  const view = new DataView(bytes.buffer);
  writeText(view, 0, type);
  fill(view);
  return bytes;
}

function writeText(view: DataView, at: number, text: string): void {
  for (let i = 0; i < text.length; i++) view.setUint8(at + i, text.charCodeAt(i));
}

function writeXyz(view: DataView, at: number, xyz: readonly number[]): void {
  xyz.forEach((value, i) => {
    view.setInt32(at + 4 * i, Math.round(value * 65536));
  });
}

const colour = (xyz: readonly number[]): Uint8Array => element('XYZ ', 12, (view) => writeXyz(view, 8, xyz));

/** Name in ASCII; the two other forms that the type has room for stay empty. */
const described = (name: string): Uint8Array =>
  element('desc', 4 + name.length + 1 + 8 + 3 + 67, (view) => {
    view.setUint32(8, name.length + 1);
    writeText(view, 12, name);
  });
