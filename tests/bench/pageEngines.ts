import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import type { Driven } from '../browser/driven.ts';
import { openFirefox } from '../browser/firefox.ts';
import { PAGE } from '../browser/pageOpened.ts';
import { openWebkit } from '../browser/webkit.ts';
import { madePerson } from '../support/people.ts';
import { below, cpuOf, memoryOf } from './processes.ts';

// The page in each engine: `npx tsx tests/bench/pageEngines.ts chromium firefox webkit`. Needs dist/daybands.html. Seconds by the clock of the
// page, and in brackets seconds of processor of all processes of the engine, which other work beside it changes little.

async function openChromium(): Promise<Driven> {
  const browser = await chromium.launch({
    executablePath: '/usr/bin/chromium',
    args: ['--headless', '--no-sandbox', '--disable-gpu'],
  });
  const page = await (await browser.newContext({ locale: 'en-US' })).newPage();
  page.setDefaultTimeout(600_000);
  return {
    ...{ name: 'chromium', version: browser.version() },
    goto: (url) => page.goto(url),
    evaluate: (expression) => page.evaluate(expression),
    setFiles: (selector, files) => page.setInputFiles(`${selector} >> nth=0`, files),
    click: (selector) => page.click(selector),
    screenshot: async () => {},
    close: () => browser.close(),
  };
}
const ENGINES: Record<string, () => Promise<Driven>> = {
  chromium: openChromium,
  firefox: openFirefox,
  webkit: openWebkit,
};

const PAPER = `document.querySelector('iframe.paper:not(.coming)') && !document.querySelector('[aria-busy]')`;
const scratch = mkdtempSync(join(tmpdir(), 'daybands-engines-'));

/** A year of readings every minute. */
function year(): string {
  const path = join(scratch, 'year.csv');
  const rows = Array.from({ length: 525_600 }, (_, i) => {
    const time = new Date(Date.UTC(2025, 0, 1) + i * 60_000).toISOString().slice(0, 16).replace('T', ' ');
    return `${time},${Math.round(130 + 50 * Math.sin(i / 190) + 15 * Math.sin(i / 37))}`;
  });
  writeFileSync(path, `Time,Sensor glucose (mg/dL)\n${rows.join('\n')}\n`);
  return path;
}
function people(count: number): string[] {
  mkdirSync(join(scratch, 'people'), { recursive: true });
  return Array.from({ length: count }, (_, i) => {
    const path = join(scratch, 'people', `P-${String(i + 1).padStart(3, '0')}.csv`);
    writeFileSync(path, madePerson(i, { days: 14, step: 5 }).readings);
    return path;
  });
}

async function measure(name: string): Promise<string> {
  const engine = await ENGINES[name]!();
  const most = { page: 0, all: 0 };
  const processes = (): number[] => below(process.pid);
  const sample = setInterval(() => {
    const held = processes().map(memoryOf);
    most.page = Math.max(most.page, ...held);
    most.all = Math.max(
      most.all,
      held.reduce((sum, one) => sum + one, 0),
    );
  }, 1000);
  const cpu = (): number => processes().reduce((sum, pid) => sum + cpuOf(pid), 0);
  const until = async (expression: string): Promise<void> => {
    while (!(await engine.evaluate(`Boolean(${expression})`))) await new Promise((done) => setTimeout(done, 50));
  };
  const cells: string[] = [];
  /** `act` begins it; the page notes by itself when `expression` holds. */
  async function timed(act: () => Promise<unknown>, expression: string): Promise<void> {
    const before = cpu();
    await engine.evaluate(`(() => {
      window.ended = 0;
      window.begun = performance.now();
      addEventListener('change', () => (window.begun = performance.now()), { capture: true, once: true });
      const look = setInterval(() => { if (${expression}) { window.ended = performance.now(); clearInterval(look); } }, 10);
    })()`);
    await act();
    await until('window.ended');
    const seconds = Number(await engine.evaluate('window.ended - window.begun')) / 1000;
    cells.push(`${seconds.toFixed(2)} (${(cpu() - before).toFixed(1)})`);
  }
  const press = (selector: string) => (): Promise<unknown> =>
    engine.evaluate(`void document.querySelector(${JSON.stringify(selector)}).click()`);
  const open = async (): Promise<void> => {
    await engine.goto(PAGE);
    await until('document.documentElement.dataset.ready');
  };
  try {
    await open();
    const timing = 'performance.timing';
    const opened = await engine.evaluate(`${timing}.domContentLoadedEventEnd - ${timing}.navigationStart`);
    cells.push((Number(opened) / 1000).toFixed(2));
    const example = '#bring .drop > .roads button';
    await timed(press(example), PAPER);
    await open();
    await timed(press(example), PAPER);
    await press('.taken button')();
    await timed(press(example), PAPER);
    await open();
    const many = people(100);
    await engine.setFiles('#bring input[type=file]', many);
    await until(`document.querySelectorAll('#who .reading button').length === 2`);
    await engine.evaluate(`document.querySelectorAll('#who .reading button')[1].click()`);
    await until(`document.querySelector('[data-do=begin]')`);
    await timed(
      press('[data-do=begin]'),
      `document.querySelectorAll('.worklist tbody tr').length >= 100 && !document.querySelector('#who progress')`,
    );
    const held = [Math.round(most.page), Math.round(most.all)];
    Object.assign(most, { page: 0, all: 0 });
    await open();
    const long = year();
    await timed(() => engine.setFiles('#bring input[type=file]', [long]), PAPER);
    const more = [Math.round(most.page), Math.round(most.all)];
    const row = [
      `${engine.name} ${engine.version}`,
      ...cells,
      held.join(' / '),
      more.join(' / '),
      loadavg()[0]!.toFixed(0),
    ];
    return `| ${row.join(' | ')} |`;
  } finally {
    clearInterval(sample);
    await engine.close();
  }
}

console.log(
  '| engine | usable, s | first paper, cold | opened again | warm | 100 people read | a year every minute | people: MB of the largest process / of all | year: the same | load |',
);
for (const name of process.argv.slice(2)) console.log(await measure(name));
rmSync(scratch, { recursive: true });
