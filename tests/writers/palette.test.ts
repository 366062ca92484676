import { describe, expect, test } from 'vitest';
import type { Role } from '../../src/model/drawing.ts';
import type { Band } from '../../src/model/targets.ts';
import { COLOUR, GREY, type Palette } from '../../src/writers/palette.ts';

/** Relative luminance and contrast as WCAG 2.2 defines them (W3C, definitions of the success criteria 1.4.3, 1.4.11). */
const luminance = (hex: string): number => {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
const contrast = (a: string, b: string): number => {
  const [dark, light] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
  return (light + 0.05) / (dark + 0.05);
};

const WHITE = '#ffffff';
const BANDS: readonly Band[] = ['very-low', 'low', 'in-range', 'high', 'very-high'];
const roles = Object.keys(COLOUR) as Role[];

test('the measure itself: black on white is 21, and #767676 just passes 4.5 (worked values of the W3C technique G18)', () => {
  expect(contrast('#000000', WHITE)).toBeCloseTo(21, 5);
  expect(contrast('#767676', WHITE)).toBeGreaterThanOrEqual(4.5);
  expect(contrast('#777777', WHITE)).toBeLessThan(4.5);
});

describe.each<[string, Palette]>([
  ['colour', COLOUR],
  ['black ink', GREY],
])('%s', (_, palette) => {
  test.each(roles)('%s: words reach 4.5 to 1 on white, and on its own fill', (role) => {
    expect(contrast(palette[role].text, WHITE)).toBeGreaterThanOrEqual(4.5);
  });

  test.each(BANDS)('%s: words on the band reach 4.5 to 1', (band) => {
    expect(contrast(palette[band].on, palette[band].fill)).toBeGreaterThanOrEqual(4.5);
  });

  test('lines that carry meaning reach 3 to 1 on white; only the grid is decoration', () => {
    const faint = roles.filter((role) => contrast(palette[role].line, WHITE) < 3);
    expect(faint).toEqual(['grid', 'paper']);
  });

  test('no hatch line is thinner than photocopies hold', () => {
    for (const band of BANDS) expect(palette[band].hatch?.width ?? 1).toBeGreaterThanOrEqual(0.75);
  });
});

test('out-of-range bands reach 3 to 1 on white', () => {
  for (const band of BANDS)
    if (band !== 'in-range') expect(contrast(COLOUR[band].fill, WHITE)).toBeGreaterThanOrEqual(3);
});

test('without colour every band has its own pattern', () => {
  const looks = BANDS.map((band) => `${GREY[band].fill} ${GREY[band].hatch?.run ?? 'none'}`);
  expect(new Set(looks).size).toBe(5);
});

test('no traffic lights: no saturated red, green or yellow', () => {
  for (const role of roles) {
    for (const hex of [COLOUR[role].fill, COLOUR[role].line]) {
      const [r, g, b] = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)) as [number, number, number];
      expect(r > 190 && g < 80 && b < 80, `${role} ${hex} is red`).toBe(false);
      expect(g > 130 && r < 90 && b < 90, `${role} ${hex} is green`).toBe(false);
      expect(r > 200 && g > 170 && b < 90, `${role} ${hex} is yellow`).toBe(false);
    }
  }
});
