import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';

import type { Browser, Page } from 'playwright-core';
import type { Analysis } from '../../src/analyse.ts';
import { compose } from '../../src/compose.ts';
import type { Report } from '../../src/model/report.ts';
import { asPrinted } from '../../src/writers/pdf/index.ts';
import { analyseStory, held } from '../samples/stories.ts';
import { fonts, wordsOf } from '../support/story.ts';
import { ownTemplate, webPage } from '../support/webPage.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
/** WCAG 2.2 AA (W3C Recommendation, 2023) as far as a program can tell, and what axe-core calls good practice. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const HERE = 'http://report.test/';
export const PHONE = { width: 360, height: 740 };
/** Where WCAG 2.2 (1.4.10, Reflow) wants no scrolling in two directions. */
export const NARROWEST = { width: 320, height: 640 };
export const DESK = { width: 1280, height: 900 };

export interface Opened {
  page: Page;
  /** Addresses asked for, and what the browser complained of, such as a breach of the policy. */
  messages: string[];
}

interface Tab extends Opened {
  html: string;
}

const [withScript, withoutScript] = [new WeakMap<Browser, Tab>(), new WeakMap<Browser, Tab>()];

async function newTab(browser: Browser, script: boolean): Promise<Tab> {
  const context = await browser.newContext({ javaScriptEnabled: script });
  const tab: Tab = { page: await context.newPage(), messages: [], html: '' };
  await tab.page.route('**/*', (route) => {
    if (route.request().url() === HERE) return route.fulfill({ contentType: 'text/html', body: tab.html });
    tab.messages.push(route.request().url());
    return route.abort();
  });
  tab.page.on('console', (message) => tab.messages.push(message.text()));
  tab.page.on('pageerror', (error) => tab.messages.push(error.message));
  return tab;
}

/**
 * A page opened under an address that exists nowhere else, watched for whatever it asks for. It takes the place of what
 * was opened before it: a tab of its own each time costs as much as most of what is then looked at.
 */
export async function opened(browser: Browser, html: string, viewport: typeof PHONE, script = true): Promise<Opened> {
  const those = script ? withScript : withoutScript;
  const tab = those.get(browser) ?? (await newTab(browser, script));
  those.set(browser, tab);
  tab.html = html;
  await tab.page.emulateMedia({ media: null });
  await tab.page.setViewportSize(viewport);
  tab.messages = [];
  await tab.page.goto(HERE);
  return { page: tab.page, messages: tab.messages };
}

/**
 * Faults that axe sees, as lines. Only these are handed over: what it found in order is far longer. They show their markup, so that it
 * need not work out a selector for each, a fifth of its time.
 */
export async function faultsOf(page: Page, iframes: boolean, rules?: readonly string[]): Promise<string[]> {
  // Half a megabyte of script, once for all looks at what is open.
  if (!(await page.evaluate(`'axe' in window`))) await page.evaluate(axe);
  const asked = JSON.stringify({ iframes, runOnly: rules ?? TAGS, resultTypes: ['violations'], selectors: false });
  const found = (await page.evaluate(
    `axe.run(document, ${asked}).then(({ violations }) => violations)`,
  )) as AxeResults['violations'];
  return found.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`);
}

export const violations = ({ page }: Opened): Promise<string[]> => faultsOf(page, true);

/** Wider than the window, measured on the page itself. */
export const overflow = ({ page }: Opened): Promise<number> =>
  page.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth');

/** Busiest of the stories: both sizes of window are looked through for it, the small one for all. */
export const BUSIEST = 'evening-exercise';

const template = await ownTemplate();

/** The person's page as the command makes it. */
const shown = (report: Report): Report =>
  report.voice === 'patient' ? asPrinted(report, fonts(), { version: 'test' }) : report;

export const personPage = (analysis: Analysis, language: string, large: boolean): string =>
  webPage(shown(compose(analysis, wordsOf(language), { voice: 'patient', paper: 'letter', large })), template);

/** All that a visit does not need, every day on a strip of its own. */
export const furtherPage = (story: string): string => {
  const further = compose(held(analyseStory(story)), wordsOf(), { voice: 'clinic', part: 'further', paper: 'a4' });
  return webPage(further, template);
};

/** Both papers of a story as web pages. */
export function webPapers(story: string, language: string): { voice: 'clinic' | 'patient'; html: string }[] {
  const analysis = analyseStory(story);
  if (!analysis.ok) return [];
  return (['clinic', 'patient'] as const).map((voice) => ({
    voice,
    html: webPage(shown(compose(analysis, wordsOf(language), { voice, paper: 'a4' })), template),
  }));
}
