import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join, relative } from 'node:path';
import { pathToFileURL } from 'node:url';
import { unzipSync } from 'fflate';
import { afterAll, expect, test } from 'vitest';
import { filesIn } from '../cli/clinicRun.ts';
import { run } from '../cli/run.ts';
import { madePerson } from '../support/people.ts';
import { home, stories } from '../support/story.ts';
import { EVERY_TOOL, needs } from '../support/tools.ts';
import { unpacked } from '../support/unpacked.ts';
import type { Driven } from './driven.ts';
import { firefoxProgram, openFirefox } from './firefox.ts';
import { PAGE } from './pageOpened.ts';
import { alone, COLLECT, onSides, type Printed, pdfPages, SIDES } from './printing.ts';
import { writtenByCommand } from './sameFiles.ts';
import { openWebkit, webkitProgram } from './webkit.ts';

/** Engines that CI tries besides: the page opened from the disk, used as a person uses it. */
const ENGINES: { name: string; there: boolean; open(): Promise<Driven> }[] = [
  { name: 'firefox-esr', there: firefoxProgram() !== undefined, open: openFirefox },
  { name: 'webkit2gtk-driver and xvfb', there: webkitProgram() !== undefined, open: openWebkit },
];

/** Waits in the page until something holds, and gives it. */
const once = (expression: string): string => `(async () => {
  for (let i = 0; i < 600; i++) {
    const found = ${expression};
    if (found) return found;
    await new Promise((done) => setTimeout(done, 50));
  }
  throw new Error('it never held');
})()`;

const SETTLED = `!document.querySelector('[aria-busy], #status:not([hidden]) button, .coming') && document.querySelector('iframe.paper, #asked h2') && 'shown'`;

/** What the page hands to the engine to save, read from where it lies. */
const savedBy = (what: string): string => `(async () => {
  const real = URL.createObjectURL;
  const blob = await new Promise((done) => {
    URL.createObjectURL = (given) => {
      URL.createObjectURL = real;
      done(given);
      return real.call(URL, given);
    };
    document.querySelector('[data-save=${what}]').click();
  });
  const reader = new FileReader();
  await new Promise((done) => { reader.onload = done; reader.readAsDataURL(blob); });
  return reader.result.slice(reader.result.indexOf(',') + 1);
})()`;

/** Drivers choose no folder: the page is told where in one the files lie, as an engine tells it for the button of folders. */
const asFolder = (folder: string, files: readonly string[]): string => `addEventListener('change', ({ target }) => {
  const paths = new Map(${JSON.stringify(files.map((file) => [basename(file), `${folder}/${file}`]))});
  for (const file of target.files ?? []) Object.defineProperty(file, 'webkitRelativePath', { value: paths.get(file.name) });
}, { capture: true })`;

// A file without a test is a failure.
if (!EVERY_TOOL)
  test.skip('Firefox and WebKit save what the command writes (tried with EVERY_TOOL=1, as CI does)', () => {});

for (const { name, there, open } of EVERY_TOOL ? ENGINES : []) {
  let opened: Promise<Driven> | undefined;
  afterAll(async () => (await opened)?.close());
  for (const story of stories) {
    needs(name, there)(`${name}, ${story}: the page saves what the command writes`, async () => {
      opened ??= open();
      const engine = await opened;
      const folder = join(home, 'sample-data', story);
      await engine.goto(PAGE);
      await engine.evaluate(once('document.documentElement.dataset.ready'));
      await engine.evaluate(`document.querySelector('input[value=visit]').click()`);
      const files = readdirSync(folder, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile() && !entry.name.startsWith('README'))
        .map(({ parentPath, name: file }) => relative(folder, join(parentPath, file)));
      if (files.some((file) => dirname(file) !== '.')) await engine.evaluate(asFolder(story, files));
      await engine.setFiles(
        '#bring input[type=file]',
        files.map((file) => join(folder, file)),
      );
      expect(await engine.evaluate(once(SETTLED))).toBe('shown');
      expect(await engine.evaluate(`document.querySelector('iframe').contentDocument.fonts.size`)).toBe(2);
      // As tall as its paper, so that the page scrolls and not the frame.
      const room = `(({ clientHeight, contentDocument }) => clientHeight - contentDocument.documentElement.scrollHeight)`;
      expect(await engine.evaluate(`${room}(document.querySelector('iframe'))`)).toBeGreaterThanOrEqual(-1);
      // The page's own listeners are heard in the frame.
      const heard = `(() => {
        const { contentDocument } = document.querySelector('iframe');
        const area = contentDocument.querySelector('main');
        let heard = false;
        area.addEventListener('x', () => { heard = true; });
        area.dispatchEvent(new Event('x'));
        return heard;
      })()`;
      expect(await engine.evaluate(heard)).toBe(true);
      const own = unzipSync(Buffer.from(String(await engine.evaluate(savedBy('zip'))), 'base64'));
      for (const [file, command] of writtenByCommand(folder)) {
        const here = Buffer.from(own[file] ?? []);
        if (file.endsWith('.pdf')) expect(unpacked(here) === unpacked(command), file).toBe(true);
        else expect(here.equals(command), file).toBe(true);
      }
    });
  }

  needs(name, there)(
    `${name}: people beside each other are read by workers of their own, listed and saved as the command does`,
    async () => {
      opened ??= open();
      const engine = await opened;
      const scratch = mkdtempSync(join(tmpdir(), 'daybands-people-'));
      const folder = join(scratch, 'in');
      mkdirSync(folder);
      for (const [i, code] of ['P-1', 'P-2', 'P-3', 'P-4'].entries())
        writeFileSync(join(folder, `${code}.csv`), madePerson(i, { days: 2, step: 30 }).readings);
      writeFileSync(join(folder, 'P-5.csv'), 'no table');
      const files = readdirSync(folder).sort();
      await engine.goto(PAGE);
      await engine.evaluate(once('document.documentElement.dataset.ready'));
      await engine.setFiles(
        '#bring input[type=file]',
        files.map((file) => join(folder, file)),
      );
      await engine.evaluate(once(`document.querySelectorAll('#who .reading button').length === 2`));
      await engine.evaluate(`document.querySelectorAll('#who .reading button')[1].click()`);
      await engine.evaluate(once(`document.querySelector('[data-do=begin]') !== null`));
      await engine.evaluate(`document.querySelector('[data-do=begin]').click()`);
      await engine.evaluate(
        once(
          `document.querySelectorAll('.worklist tbody tr').length === 5 && !document.querySelector('#who progress')`,
        ),
      );
      const own = unzipSync(Buffer.from(String(await engine.evaluate(savedBy('everything'))), 'base64'));
      // A day that was named has no time of day beside it, as the page has none.
      const today = new Date().toISOString().slice(0, 10);
      expect(run(scratch, ['clinic', 'in', '--out', 'out', '--date', today]).exit).toBe(2);
      const command = filesIn(join(scratch, 'out'));
      for (const path of command.keys()) if (/(^run-|\/record\.json$)/.test(path)) command.delete(path);
      expect(Object.keys(own).sort()).toEqual([...command.keys()].sort());
      for (const [path, file] of command) {
        const here = Buffer.from(own[path]!);
        if (path.endsWith('.pdf')) expect(unpacked(here) === unpacked(file), path).toBe(true);
        else expect(here.equals(file), path).toBe(true);
      }
      rmSync(scratch, { recursive: true });
    },
  );

  needs(name, there)(
    `${name}: exactly the sheets that are ticked are printed, the person's on its two sides`,
    async () => {
      opened ??= open();
      const engine = await opened;
      const scratch = mkdtempSync(join(tmpdir(), 'daybands-print-'));
      await engine.goto(PAGE);
      await engine.evaluate(once('document.documentElement.dataset.ready'));
      await engine.evaluate(COLLECT);
      await engine.evaluate(`document.querySelector('input[value=visit]').click()`);
      await engine.evaluate(`document.querySelector('#bring .drop > .roads button').click()`);
      expect(await engine.evaluate(once(SETTLED))).toBe('shown');
      await engine.evaluate(`document.querySelector('[data-save=print]').click()`);
      await engine.evaluate(once('window.printed.length === 2'));
      const printed = (await engine.evaluate('window.printed')) as Printed[];
      expect(printed.map(({ title }) => title)).toEqual(['Report for the care team', 'Sheet for the person']);
      // As PDF where the driver prints; else by the layout of its sheets.
      const path = join(scratch, 'sheet.html');
      writeFileSync(path, engine.pdf ? alone(printed[1]!) : onSides(printed[1]!));
      await engine.goto(pathToFileURL(path).href);
      if (engine.pdf) expect(await pdfPages(await engine.pdf())).toHaveLength(2);
      else expect(await engine.evaluate(SIDES)).toEqual([1, 1]);
      rmSync(scratch, { recursive: true });
    },
  );
}
