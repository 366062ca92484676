import { chromium, type Page } from 'playwright-core';
import { bring, PAGE, settled } from '../browser/pageOpened.ts';
import { cpuOfPages, tracer } from './engine.ts';

// How long a change on the page takes until the new paper is shown, with 28 invented days of a reading every 3 minutes, in Chromium:
// `npx tsx tests/bench/pageChange.ts 10`. Needs dist/daybands.html. Milliseconds by the clock are of this machine as it is; those of
// processor are of the page's process, its worker with it, to a hundredth of a second.

const DAYS = 28;
const STEP = 3;

function invented(): string {
  const start = Date.UTC(2026, 2, 2);
  const rows = Array.from({ length: (DAYS * 1440) / STEP }, (_, i) => {
    const at = new Date(start + i * STEP * 60_000).toISOString().slice(0, 16);
    const low = Math.sin(i / 1201) > 0.85 ? 60 : 0;
    const mgdl = 135 + 55 * Math.sin(i / 73) + 20 * Math.sin(i / 11) + ((i * 37) % 13) - 6 - low;
    return `${at},${Math.round(mgdl)},${i % 160 === 0 ? 45 : ''},${i % 160 === 0 ? 5 : ''}`;
  });
  return ['Time,Glucose (mg/dL),Carbohydrate (g),Rapid insulin (IU)', ...rows, ''].join('\n');
}

/** Makes a change and waits until another paper is painted in the place of the one before. */
const change = (page: Page, label: string, value: string): Promise<number> =>
  page.evaluate(`new Promise((done) => {
    const before = document.querySelector('#paper iframe.paper');
    const field = [...document.querySelectorAll('#look label')].find((one) => one.textContent.includes(${JSON.stringify(label)}));
    const input = field.querySelector('select, input');
    const start = performance.now();
    const look = () => {
      const all = document.querySelectorAll('#paper iframe');
      if (all.length === 1 && all[0] !== before && all[0].className === 'paper')
        requestAnimationFrame(() => setTimeout(() => done(performance.now() - start)));
      else setTimeout(look, 1);
    };
    if (input.type === 'checkbox') input.click();
    else {
      input.value = ${JSON.stringify(value)};
      input.dispatchEvent(new Event('change'));
    }
    look();
  })`);

const middle = (values: readonly number[]): number =>
  Math.round([...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!);

const times = Number(process.argv[2] ?? 10);
const server = await chromium.launchServer({
  executablePath: '/usr/bin/chromium',
  args: ['--headless', '--no-sandbox', '--disable-gpu'],
});
try {
  const browser = await chromium.connect(server.wsEndpoint());
  const page = await (await browser.newContext({ locale: 'en-US', viewport: { width: 1280, height: 900 } })).newPage();
  await page.goto(PAGE);
  await page.check('input[value=visit]');
  await bring(page, { 'days.csv': invented() });
  console.log(
    '| paper | change | ms by the clock: median, least | ms of processor: median, least | longest task, ms of processor (by the clock) |',
  );
  for (const paper of ['clinic', 'patient', 'further']) {
    await page.click(`#tab-${paper}`);
    await page.waitForTimeout(500);
    await settled(page);
    for (const [label, values] of [
      ['Days to look at', ['14', '28']],
      ['Goals', ['older', 'adult']],
      ['Grey', ['', '']],
    ] as const) {
      const [clock, cpu]: [number[], number[]] = [[], []];
      // The first two are made to warm up.
      for (let i = -2; i < times; i++) {
        if (i === 0) await page.waitForTimeout(300);
        const before = cpuOfPages(server.process().pid!);
        const took = await change(page, label, values[Math.abs(i) % 2]!);
        await settled(page);
        if (i < 0) continue;
        clock.push(took);
        cpu.push(cpuOfPages(server.process().pid!) - before);
      }
      // Traced by itself, as tracing takes time too.
      const traced = await tracer(browser);
      for (let i = 0; i < 4; i++) {
        await change(page, label, values[i % 2]!);
        await settled(page);
      }
      const task = await traced();
      const row = [`${middle(clock)}, ${Math.round(Math.min(...clock))}`, `${middle(cpu)}, ${Math.min(...cpu)}`];
      console.log(`| ${[paper, label, ...row, `${task.cpu} (${task.clock})`].join(' | ')} |`);
    }
  }
  await browser.close();
} finally {
  await server.close();
}
