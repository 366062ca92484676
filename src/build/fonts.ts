import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import { usualCut } from '../writers/pdf/index.ts';

const PLEX = '@expo-google-fonts/ibm-plex-sans';
const noto = (name: string): [from: string, to: string] => [
  `@expo-google-fonts/noto-sans-${name.toLowerCase()}/400Regular/NotoSans${name}_400Regular.ttf`,
  `NotoSans${name}-Regular.ttf`,
];

/** Where each face of the product comes from, and its name there. One weight will do for scripts met in names and notes. */
export const FACES: readonly (readonly [from: string, to: string])[] = [
  [`${PLEX}/400Regular/IBMPlexSans_400Regular.ttf`, 'IBMPlexSans-Regular.ttf'],
  [`${PLEX}/600SemiBold/IBMPlexSans_600SemiBold.ttf`, 'IBMPlexSans-SemiBold.ttf'],
  ['dejavu-fonts-ttf/ttf/DejaVuSans.ttf', 'DejaVuSans.ttf'],
  ['dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf', 'DejaVuSans-Bold.ttf'],
  ['@embedpdf/fonts-sc/fonts/NotoSansHans-Regular.otf', 'NotoSansHans-Regular.otf'],
  ['@embedpdf/fonts-kr/fonts/NotoSansKR-Regular.otf', 'NotoSansKR-Regular.otf'],
  ...['Devanagari', 'Bengali', 'Tamil', 'Thai'].map(noto),
];

/** Their licences ask to travel with them. */
const LICENCES: readonly (readonly [from: string, to: string])[] = [
  [`${PLEX}/LICENSE_FONT`, 'LICENSE'],
  ['dejavu-fonts-ttf/LICENSE', 'LICENSE-DejaVu'],
  ['@embedpdf/fonts-sc/LICENSE', 'LICENSE-NotoSansHans-NotoSansKR'],
  ['@expo-google-fonts/noto-sans-devanagari/LICENSE_FONT', 'LICENSE-NotoSans'],
];

/** The faces of every report, of which the command finds the usual glyphs cut out and packed. */
const REPORTS = ['IBMPlexSans-Regular', 'IBMPlexSans-SemiBold'];

/** Copies faces and licences from the packages into `folder`, and cuts the faces of reports. */
export function copyFonts(home: string, folder: string): void {
  mkdirSync(folder, { recursive: true });
  for (const [from, to] of [...FACES, ...LICENCES]) cpSync(join(home, 'node_modules', from), join(folder, to));
  for (const name of REPORTS) {
    const cut = usualCut(readFileSync(join(folder, `${name}.ttf`)), (bytes) => deflateSync(bytes));
    writeFileSync(join(folder, `${name}.cut`), cut);
  }
}
