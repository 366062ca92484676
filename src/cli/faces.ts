import type { Script } from '../writers/pdf/index.ts';

/** Faces for scripts the report's own two do not have, by script; bold where there is a bold one. */
const FACES: Record<Script, readonly [regular: string, strong?: string]> = {
  other: ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf'],
  chinese: ['NotoSansHans-Regular.otf'],
  korean: ['NotoSansKR-Regular.otf'],
  devanagari: ['NotoSansDevanagari-Regular.ttf'],
  bengali: ['NotoSansBengali-Regular.ttf'],
  tamil: ['NotoSansTamil-Regular.ttf'],
  thai: ['NotoSansThai-Regular.ttf'],
};

/** Name of the font file for a script. */
export function faceOf(script: Script, strong: boolean): string {
  const [regular, bold = regular] = FACES[script];
  return strong ? bold : regular;
}
