import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { compose } from '../../src/compose.ts';
import type { Report } from '../../src/model/report.ts';
import { analyseStory, held } from '../samples/stories.ts';
import { type Rgb, seenBy, type Viewer } from '../support/colour.ts';
import { type Image, readPixmap, writePng } from '../support/png.ts';
import { analysisOf, stories, wordsOf } from '../support/story.ts';
import { run } from '../support/tools.ts';
import { write } from '../writers/paper.ts';

/**
 * Makes the pictures of docs/looks.md: `npx tsx tests/looks/looks.ts`. Needs pdftoppm. The first sheet of both papers
 * of one story (of the person's both sides), as printed in colour and in grey, as a copier without colour gives the colour print, and as seen with
 * each of the three colour-vision deficiencies; every sheet of the clinic report of each story, small; and what an earlier visit adds, of
 * the story of four visits.
 */
const STORY = 'evening-exercise';
const DPI = '54';
const SMALL_DPI = '27';
const out = fileURLToPath(new URL('../../docs/looks/', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'daybands-looks-'));

const analysis = held(analyseStory(STORY, { period: { days: 14 } }));

const sheet = (
  voice: Report['voice'],
  options: { grey?: boolean; large?: boolean; number?: number } = {},
): Promise<Image> => pictured(compose(analysis, wordsOf(), { voice, paper: 'a4', large: options.large }), options);

async function pictured(report: Report, options: { grey?: boolean; number?: number } = {}): Promise<Image> {
  const number = String(options.number ?? 1);
  const file = join(folder, 'a.pdf');
  writeFileSync(file, await write(report, { grey: options.grey ?? false }));
  run('pdftoppm', ['-r', DPI, '-f', number, '-l', number, '-singlefile', file, join(folder, 'a')]);
  return readPixmap(readFileSync(join(folder, 'a.ppm')));
}

function simulated({ width, height, data }: Image, viewer: Viewer): Image {
  const known = new Map<number, Rgb>();
  const seen = new Uint8Array(data.length);
  for (let i = 0; i < data.length; i += 3) {
    const key = (data[i]! << 16) | (data[i + 1]! << 8) | data[i + 2]!;
    let colour = known.get(key);
    if (!colour) {
      colour = seenBy(viewer, [data[i]! / 255, data[i + 1]! / 255, data[i + 2]! / 255]);
      known.set(key, colour);
    }
    for (let k = 0; k < 3; k++) seen[i + k] = Math.round(colour[k]! * 255);
  }
  return { width, height, data: seen };
}

let total = 0;
function keep(name: string, image: Image): void {
  const png = writePng(image);
  total += png.length;
  writeFileSync(join(out, `${name}.png`), png);
}

for (const voice of ['clinic', 'patient'] as const) {
  const colour = await sheet(voice);
  keep(`${voice}-colour`, colour);
  keep(`${voice}-grey`, await sheet(voice, { grey: true }));
  for (const viewer of ['grey', 'protan', 'deutan', 'tritan'] as const)
    keep(`${voice}-${viewer === 'grey' ? 'copier' : viewer}`, simulated(colour, viewer));
}
/** Every sheet of the clinic report of a story, small, side by side. */
async function allSheets(story: string): Promise<Image> {
  const file = join(folder, 'b.pdf');
  writeFileSync(file, await write(compose(await analysisOf(story), wordsOf(), { voice: 'clinic', paper: 'a4' })));
  run('pdftoppm', ['-r', SMALL_DPI, file, join(folder, `b-${story}`)]);
  const names = readdirSync(folder).filter((name) => name.startsWith(`b-${story}-`));
  const sheets = names.sort().map((name) => readPixmap(readFileSync(join(folder, name))));
  const width = sheets.reduce((sum, one) => sum + one.width, 0);
  const { height } = sheets[0]!;
  const data = new Uint8Array(width * height * 3);
  let left = 0;
  for (const one of sheets) {
    for (let y = 0; y < height; y++)
      data.set(one.data.subarray(y * one.width * 3, (y + 1) * one.width * 3), (y * width + left) * 3);
    left += one.width;
  }
  return { width, height, data };
}

for (const story of stories) keep(`after-${story}`, await allSheets(story));
keep('patient-second', await sheet('patient', { number: 2 }));
keep('patient-large', await sheet('patient', { large: true }));

const visits = await analysisOf('four-visits');
for (const [name, voice] of [
  ['visits-clinic', 'clinic'],
  ['visits-person', 'patient'],
] as const)
  keep(name, await pictured(compose(visits, wordsOf(), { voice, paper: 'a4' }), { number: 2 }));
const further = compose(visits, wordsOf(), { voice: 'clinic', paper: 'a4', part: 'further' });
const rows = further.pages.filter(({ id }) => id === 'visit-by-visit');
keep('visits-rows', await pictured({ ...further, pages: rows }));
rmSync(folder, { recursive: true });
console.log(`${Math.round(total / 1000)} kB in ${out}`);
