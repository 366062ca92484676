import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';
import { needs } from '../support/tools.ts';

const PATH = '/usr/bin/chromium';

/** Quiet: no service of its own may speak to the network while a page is watched. */
const QUIET = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

type Body = (browser: Browser) => Promise<void>;

let browser: Promise<Browser> | undefined;

/**
 * A test with a browser, where there is one. Files that a worker runs share it, and the tabs kept in it: starting one takes a second
 * of processor time. It ends with the worker, which is told to.
 */
export function inBrowser(): (name: string, body: Body) => void {
  const test = needs('chromium', existsSync(PATH));
  return (name, body) =>
    test(name, async () => {
      browser ??= chromium.launch({ executablePath: PATH, args: QUIET });
      await body(await browser);
    }, 120_000);
}
