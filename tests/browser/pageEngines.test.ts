import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join, relative } from 'node:path';
import { unzipSync } from 'fflate';
import { expect } from 'vitest';
import { filesIn } from '../cli/clinicRun.ts';
import { run } from '../cli/run.ts';
import { madePerson } from '../support/people.ts';
import { home, stories } from '../support/story.ts';
import { unpacked } from '../support/unpacked.ts';
import { inEngines, once, openIn, SETTLED } from './engines.ts';
import { writtenByCommand } from './sameFiles.ts';

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

inEngines('saved is what the command writes', (check) => {
  for (const story of stories) {
    check(`${story}: the page saves what the command writes`, async (engine) => {
      const folder = join(home, 'sample-data', story);
      await openIn(engine, 'visit');
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

  check(
    'people beside each other are read by workers of their own, listed and saved as the command does',
    async (engine) => {
      const scratch = mkdtempSync(join(tmpdir(), 'daybands-people-'));
      const folder = join(scratch, 'in');
      mkdirSync(folder);
      for (const [i, code] of ['P-1', 'P-2', 'P-3', 'P-4'].entries())
        writeFileSync(join(folder, `${code}.csv`), madePerson(i, { days: 2, step: 30 }).readings);
      writeFileSync(join(folder, 'P-5.csv'), 'no table');
      const files = readdirSync(folder).sort();
      await openIn(engine, 'own');
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
});
