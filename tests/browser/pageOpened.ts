import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { unzipSync } from 'fflate';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { home } from '../support/story.ts';
import { DESK, faultsOf } from './opened.ts';

export const PAGE = pathToFileURL(join(home, 'dist/daybands.html')).href;

export interface OpenedPage {
  page: Page;
  /** Addresses asked for beside the page itself, complaints of the engine, and faults. */
  messages: string[];
}

/** The page as a person opens it, from the disk, watched for whatever it asks for or complains of. */
export async function openPage(
  browser: Browser,
  options: BrowserContextOptions = {},
  first?: string,
): Promise<OpenedPage> {
  const context = await browser.newContext({ locale: 'en-US', viewport: DESK, ...options });
  // Runs before anything of the page's own.
  if (first !== undefined) await context.addInitScript(first);
  const page = await context.newPage();
  const messages: string[] = [];
  page.on('request', (request) => {
    if (request.url() !== PAGE && !/^(blob|data):/.test(request.url())) messages.push(request.url());
  });
  page.on('console', (message) => messages.push(message.text()));
  page.on('pageerror', (error) => messages.push(error.message));
  await page.goto(PAGE);
  return { page, messages };
}

const kept = new WeakMap<Browser, Map<string, OpenedPage>>();

/**
 * The page opened anew in a tab that such a person had open before, where nothing is left of what was done in it: a tab
 * of its own each time costs more than most of what is then looked at. Nobody closes it before the browser.
 */
export async function openAgain(browser: Browser, options: BrowserContextOptions = {}): Promise<OpenedPage> {
  const tabs = kept.get(browser) ?? new Map<string, OpenedPage>();
  kept.set(browser, tabs);
  const key = JSON.stringify(options);
  const tab = tabs.get(key);
  if (tab === undefined) {
    const first = await openPage(browser, options);
    tabs.set(key, first);
    return first;
  }
  const { page, messages } = tab;
  // What a test before, of another file too, had set or was listening for.
  for (const event of ['dialog', 'download'] as const) page.removeAllListeners(event);
  await page.emulateMedia({ media: null });
  await page.setViewportSize(options.viewport ?? DESK);
  messages.length = 0;
  await page.goto(PAGE);
  return tab;
}

/** Waits until an expression holds in the page. Asked from outside: the policy of the page lets nothing be evaluated within. */
export async function until(page: Page, expression: string, most = 30_000): Promise<void> {
  for (const end = Date.now() + most; !(await page.evaluate(`Boolean(${expression})`)); ) {
    if (Date.now() > end) throw new Error(`It never held: ${expression}`);
    await new Promise((done) => setTimeout(done, 20));
  }
}

/** Until papers, questions or a fault are shown, and nothing is on its way. */
export const settled = (page: Page): Promise<void> =>
  until(
    page,
    `!document.querySelector('[aria-busy], #status:not([hidden]) button, .coming') &&
      document.querySelector('iframe.paper, #asked h2, #who h2, #status .grave')`,
  );

/** The first file button takes files; texts are files of these names. */
export async function bring(page: Page, files: string[] | Record<string, string>): Promise<void> {
  const given = Array.isArray(files)
    ? files
    : Object.entries(files).map(([name, text]) => ({ name, mimeType: 'text/csv', buffer: Buffer.from(text) }));
  await page.setInputFiles('input[type=file]', given);
  await settled(page);
}

/** The button for folders takes one, with all that lies in it. */
export async function bringFolder(page: Page, folder: string): Promise<void> {
  await page.setInputFiles('input[type=file][webkitdirectory]', folder);
  await settled(page);
}

/** What one of the buttons that save hands to the browser. */
export async function savedBy(page: Page, what: string): Promise<{ name: string; bytes: Uint8Array }> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.click(`[data-save="${what}"]`)]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

/** Everything, out of the one archive. */
export const savedAll = async (page: Page): Promise<Record<string, Uint8Array>> =>
  unzipSync((await savedBy(page, 'zip')).bytes);

/** Words too faint for what they lie on: all that another scheme of colours can change. */
export const faintWords = (page: Page): Promise<string[]> => faultsOf(page, false, ['color-contrast']);

/** Faults that axe sees. A paper's frame runs no script, so not axe either: papers are looked at as pages of their own. */
export const faults = (page: Page): Promise<string[]> => faultsOf(page, false);
