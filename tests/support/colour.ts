/** Red, green and blue, 0 to 1. */
export type Rgb = readonly [number, number, number];

export const rgbOf = (hex: string): Rgb =>
  [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255) as unknown as Rgb;

/** sRGB to linear light and back (IEC 61966-2-1). */
export const linear = (value: number): number => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4);
export const encoded = (value: number): number => {
  const held = Math.min(1, Math.max(0, value));
  return held <= 0.0031308 ? held * 12.92 : 1.055 * held ** (1 / 2.4) - 0.055;
};

/** Relative luminance and contrast as WCAG 2.2 defines them. */
const luminance = (colour: Rgb): number => {
  const [r, g, b] = colour.map(linear) as unknown as Rgb;
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
export function contrast(one: Rgb, other: Rgb): number {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

export type Viewer = 'protan' | 'deutan' | 'tritan' | 'grey';

/** Full deficiency, on linear RGB (Machado, Oliveira and Fernandes 2009, table of severity 1.0; from memory). */
const MACHADO: Record<'protan' | 'deutan' | 'tritan', readonly Rgb[]> = {
  protan: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deutan: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritan: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

/** A colour as a viewer sees it; `grey` as a copier without colour prints it (luminance kept). */
export function seenBy(viewer: Viewer, colour: Rgb): Rgb {
  if (viewer === 'grey') {
    const value = encoded(luminance(colour));
    return [value, value, value];
  }
  const light = colour.map(linear) as unknown as Rgb;
  return MACHADO[viewer].map((row) =>
    encoded(row[0] * light[0] + row[1] * light[1] + row[2] * light[2]),
  ) as unknown as Rgb;
}

/** CIE L*a*b* under D65. */
function lab(colour: Rgb): Rgb {
  const [r, g, b] = colour.map(linear) as unknown as Rgb;
  const [x, y, z] = [
    (0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / 0.95047,
    0.2126729 * r + 0.7151522 * g + 0.072175 * b,
    (0.0193339 * r + 0.119192 * g + 0.9503041 * b) / 1.08883,
  ].map((value) => (value > 216 / 24389 ? Math.cbrt(value) : (value * 24389) / 27 / 116 + 16 / 116)) as unknown as Rgb;
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

export const difference = (one: Rgb, other: Rgb): number => ciede2000(lab(one), lab(other));

/** CIEDE2000 (formula as in Sharma, Wu and Dalal 2005). */
export function ciede2000([l1, a1, b1]: Rgb, [l2, a2, b2]: Rgb): number {
  const deg = Math.PI / 180;
  const c7 = ((Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2) ** 7;
  const g = 0.5 * (1 - Math.sqrt(c7 / (c7 + 25 ** 7)));
  const [p1, p2] = [a1 * (1 + g), a2 * (1 + g)];
  const [c1, c2] = [Math.hypot(p1, b1), Math.hypot(p2, b2)];
  const hue = (a: number, b: number): number => (a === 0 && b === 0 ? 0 : (Math.atan2(b, a) / deg + 360) % 360);
  const [h1, h2] = [hue(p1, b1), hue(p2, b2)];
  let dh = h2 - h1;
  if (c1 * c2 === 0) dh = 0;
  else if (dh > 180) dh -= 360;
  else if (dh < -180) dh += 360;
  const big = 2 * Math.sqrt(c1 * c2) * Math.sin((dh / 2) * deg);
  const [l, c] = [(l1 + l2) / 2, (c1 + c2) / 2];
  let h = h1 + h2;
  if (c1 * c2 !== 0) h = Math.abs(h1 - h2) <= 180 ? h / 2 : h < 360 ? (h + 360) / 2 : (h - 360) / 2;
  const t =
    1 -
    0.17 * Math.cos((h - 30) * deg) +
    0.24 * Math.cos(2 * h * deg) +
    0.32 * Math.cos((3 * h + 6) * deg) -
    0.2 * Math.cos((4 * h - 63) * deg);
  const rc = 2 * Math.sqrt(c ** 7 / (c ** 7 + 25 ** 7));
  const sl = 1 + (0.015 * (l - 50) ** 2) / Math.sqrt(20 + (l - 50) ** 2);
  const [sc, sh] = [1 + 0.045 * c, 1 + 0.015 * c * t];
  const rt = -Math.sin(2 * 30 * Math.exp(-(((h - 275) / 25) ** 2)) * deg) * rc;
  const [x, y, z] = [(l2 - l1) / sl, (c2 - c1) / sc, big / sh];
  return Math.sqrt(x * x + y * y + z * z + rt * y * z);
}
