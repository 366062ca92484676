import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import * as source from '../../src/index.ts';
import { givenOf } from '../support/library.ts';
import { fonts, stories } from '../support/story.ts';
import { unpacked } from '../support/unpacked.ts';
import { home, run, scratch } from './run.ts';

const built = (await import(pathToFileURL(join(home, 'dist/index.mjs')).href)) as typeof source;
const template = JSON.parse(readFileSync(join(home, 'dist/page.json'), 'utf8'));

const analysed = (library: typeof source, given: Awaited<ReturnType<typeof givenOf>>): source.Analysis => {
  const analysis = library.analyse(given.inputs, given.settings);
  if (!analysis.ok) throw new Error(JSON.stringify(analysis.issues));
  return analysis;
};

test.each(stories)(
  '%s: the library gives the numbers and the hash of the command, built and from its source',
  async (story) => {
    const folder = scratch();
    expect(run(folder, ['report', join(home, 'sample-data', story), '--out', 'out']).exit).toBe(0);
    const name = readdirSync(join(folder, 'out')).find((one) => one.endsWith('-analysis.json'))!;
    const numbers = readFileSync(join(folder, 'out', name), 'utf8');
    const given = await givenOf(story);
    for (const library of [built, source])
      expect(library.analysisJson(analysed(library, given)).join('')).toBe(numbers);
  },
);

test('the library writes the papers of the command: PDF, web page and FHIR', async () => {
  const folder = scratch();
  const asked = ['report', join(home, 'sample-data/steady-fortnight'), '--html', '--language', 'es', '--out', 'out'];
  expect(run(folder, asked).exit).toBe(0);
  const paper = (ending: string): Buffer => readFileSync(join(folder, 'out', `HL-104-${ending}`));
  const analysis = analysed(built, await givenOf('steady-fortnight'));
  const words = await built.words('es');
  const report = built.compose(analysis, words, { voice: 'clinic', paper: 'a4' });
  const pdf = await built.writePdf(report, fonts());
  expect(unpacked(pdf)).toBe(unpacked(paper('clinic-report.pdf')));
  expect(await built.writeHtml(report, template, { words })).toBe(paper('clinic-report.html').toString());
  const bundle = await built.fhirBundle(analysis, { pdf, readings: false });
  expect(bundle.entry.map(({ resource }) => resource.resourceType)).toContain('DiagnosticReport');
}, 60_000);

test('words go by a language, a region, or both', async () => {
  expect(await built.words()).toEqual(await built.words('en'));
  expect(await built.words('es', 'ES')).toMatchObject({ id: 'es', locale: 'es-ES' });
  expect(await built.words('en-GB')).toMatchObject({ id: 'en', locale: 'en-GB' });
  expect(await built.words('es-ES')).toEqual(await built.words('es', 'ES'));
  for (const [name, region] of [['en', 'FR'], ['fr'], ['es-FR'], ['', 'MX'], ['es-MX', 'ES']] as const)
    await expect(built.words(name, region)).rejects.toThrow(/^no words for/);
});
