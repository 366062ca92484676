import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { build, type Metafile, type Plugin } from 'esbuild';
import manifest from '../../package.json' with { type: 'json' };
import { fingerprint } from '../bytes/hash.ts';
import { AS_BUILT, REVISED } from '../papers/bakedPage.ts';
import { KINDS } from '../schemas/layout.ts';
import { targetSets } from '../targets/index.ts';
import { FINDER_SCRIPT } from '../writers/html/finderScript.ts';
import { SCRIPT } from '../writers/html/script.ts';
import { anywhere } from './core.ts';
import { FACES } from './fonts.ts';
import { guidePictures } from './guidePictures.ts';
import { singleFile } from './singleFile.ts';

/** Languages the page speaks: those of the papers. */
const LANGUAGES = ['en', 'es'] as const;
/** The two faces of the papers. */
const REGULAR = 'IBMPlexSans-Regular.ttf';
const SEMIBOLD = 'IBMPlexSans-SemiBold.ttf';
/** The invented fortnight to try. */
const EXAMPLE = ['readings', 'logbook'] as const;

export interface Page {
  html: string;
  /** What stands in the page's own script and in the worker's: nothing of a package belongs into the first. */
  script: Metafile;
  worker: Metafile;
}

/** The page as one file. `template` is the compiled template of web pages, as JSON; `date` the day, YYYY-MM-DD. */
export async function buildPage(home: string, template: string, date: string): Promise<Page> {
  const read = (path: string): Buffer => readFileSync(join(home, path));
  const bundled = async (entry: string) => {
    const built = await build({
      ...anywhere,
      absWorkingDir: home,
      format: 'iife',
      define: { 'import.meta.url': '"file:///daybands/"' },
      entryPoints: [entry],
      plugins: [...(anywhere.plugins ?? []), paperScript],
      write: false,
    });
    return { text: asScript(built.outputFiles[0]!.text.trimEnd()), metafile: built.metafile! };
  };
  const [script, worker] = await Promise.all([bundled('src/page/main.ts'), bundled('src/page/worker/index.ts')]);
  const face = (name: string): string =>
    read(join('node_modules', FACES.find(([, to]) => to === name)![0])).toString('base64');
  const pictures = guidePictures(home);
  const guides: [string, string][] = [];
  for (const guide of ['patient', 'clinic'] as const)
    for (const language of LANGUAGES)
      guides.push([`guide-${guide}-${language}`, JSON.stringify(await pictures(guide, language))]);
  const html = singleFile({
    title: 'Daybands',
    style: read('src/page/page.css').toString('utf8'),
    body: BODY,
    script: script.text,
    data: {
      ...Object.fromEntries(
        LANGUAGES.map((language) => [`words-${language}`, JSON.stringify(screenWords(home, language))]),
      ),
      ...Object.fromEntries(guides),
      [AS_BUILT]: JSON.stringify(hashes(home)),
      stamp: `${manifest.version}, ${date}`,
      template,
      'face-regular': face(REGULAR),
      'face-semibold': face(SEMIBOLD),
      ...Object.fromEntries(
        EXAMPLE.map((name) => [
          `example-${name}`,
          gzipSync(read(`sample-data/steady-fortnight/${name}.csv`), { level: 9 }).toString('base64'),
        ]),
      ),
      worker: worker.text,
    },
  });
  return { html, script: script.metafile, worker: worker.metafile };
}

/** The script of the papers' web pages, as a function of the document and the window it is to work in. */
const paperScript: Plugin = {
  name: 'paper-script',
  setup({ onLoad }) {
    onLoad({ filter: /page[\\/]views[\\/]enliven\.ts$/ }, () => ({
      contents: `export const enliven = (document, addEventListener) => {\n${FINDER_SCRIPT}${SCRIPT}\n};`,
    }));
  },
};

/** The same script, with nothing in it that would end the element it stands in or begin a comment there. */
const asScript = (text: string): string => text.replace(/<\/(script)/gi, '<\\/$1').replaceAll('<!--', '<\\!--');

const BODY = `<a class="skip" id="skip" href="#main">Daybands</a>
<header id="head"></header>
<main id="main" tabindex="-1">
<h1 class="unseen">Daybands</h1>
<div id="bring"></div>
<div id="status" role="status"></div>
<div id="who"></div>
<div id="asked"></div>
<div id="faces" hidden></div>
<section id="papers" hidden>
<div id="told"></div>
<div id="strip"></div>
<div id="sides">
<div><div id="tabs"></div><div id="paper" role="tabpanel"></div></div>
<div id="beside"><div id="look"></div><div id="visit"></div><div id="saving"></div></div>
</div>
</section>
<div id="ledger"></div>
</main>
<dialog id="guide"></dialog>
<dialog id="day" aria-labelledby="day-name"></dialog>
<footer id="foot"></footer>
<noscript><p>This page works with its script. Esta página funciona con su programa.</p></noscript>`;

/** Of what a clinic may change, as it is now: whoever makes a copy of the page finds what was changed since. */
const hashes = (home: string): Record<string, string> =>
  Object.fromEntries(
    [
      ...readdirSync(join(home, 'templates/words'))
        .sort()
        .map((name) => `words/${name}`),
      ...Object.values(REVISED),
    ].map((path) => [path, fingerprint(readFileSync(join(home, 'templates', path)))]),
  );

/** What the page says itself; all else comes said from the worker. */
function screenWords(home: string, language: string) {
  const words = JSON.parse(readFileSync(join(home, `templates/words/${language}.json`), 'utf8'));
  return {
    language,
    screen: words.screen,
    targets: Object.fromEntries(Object.keys(targetSets).map((id) => [id, words.targets[id].name])),
    roles: words.understood.roles,
    kinds: KINDS,
    cautions: words.cautions,
  };
}
