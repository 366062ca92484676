import { afterAll, test } from 'vitest';
import { EVERY_TOOL, needs } from '../support/tools.ts';
import type { Handled } from './driven.ts';
import { firefoxProgram, openFirefox } from './firefox.ts';
import { PAGE } from './pageOpened.ts';
import { openWebkit, webkitProgram } from './webkit.ts';

/** Engines that CI tries besides Chromium, each as its packages of Debian bring it. */
const ENGINES: { name: string; there: boolean; open(): Promise<Handled> }[] = [
  { name: 'firefox-esr', there: firefoxProgram() !== undefined, open: openFirefox },
  { name: 'webkit2gtk-driver and xvfb', there: webkitProgram() !== undefined, open: openWebkit },
];

type Check = (name: string, body: (engine: Handled) => Promise<void>) => void;

/**
 * Has tests run in each of the further engines where all tools are asked for; each is opened once for a file and closed with it. Elsewhere one
 * skipped test says what is not tried, as a file without a test is a failure.
 */
export function inEngines(what: string, tests: (check: Check) => void): void {
  if (!EVERY_TOOL) {
    test.skip(`Firefox and WebKit: ${what} (tried with EVERY_TOOL=1, as CI does)`, () => {});
    return;
  }
  for (const { name, there, open } of ENGINES) {
    let opened: Promise<Handled> | undefined;
    afterAll(async () => (await opened)?.close());
    tests((title, body) =>
      needs(name, there)(`${name}: ${title}`, async () => {
        opened ??= open();
        await body(await opened);
      }),
    );
  }
}

/** Waits in the page until something holds, and gives it. */
export const once = (expression: string): string => `(async () => {
  for (let i = 0; i < 600; i++) {
    const found = ${expression};
    if (found) return found;
    await new Promise((done) => setTimeout(done, 50));
  }
  throw new Error('it never held: ' + ${JSON.stringify(expression)});
})()`;

/** Until papers or questions are shown, and nothing is on its way. */
export const SETTLED = `!document.querySelector('[aria-busy], #status:not([hidden]) button, .coming') && document.querySelector('iframe.paper, #asked h2') && 'shown'`;

/** The page anew, used as for a visit or as for one's own days. */
export async function openIn(engine: Handled, way: 'own' | 'visit'): Promise<void> {
  await engine.goto(PAGE);
  await engine.evaluate(once('document.documentElement.dataset.ready'));
  await engine.evaluate(`document.querySelector('input[value=${way}]').click()`);
}

/** The invented fortnight, shown. */
export async function openExampleIn(engine: Handled, way: 'own' | 'visit'): Promise<void> {
  await openIn(engine, way);
  await engine.click('#bring .drop > .roads button');
  await engine.evaluate(once(SETTLED));
}
