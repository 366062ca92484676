import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import { settle } from '../../src/cli/settings.ts';
import { paperWords } from '../../src/cli/words.ts';
import { placeOf } from '../../src/language/index.ts';
import { home, listed, run, scratch } from './run.ts';

const story = join(home, 'sample-data/steady-fortnight');

async function opened(path: string): Promise<{ text: string; width: number; language: string | undefined }> {
  const pdf = await getDocument({ data: new Uint8Array(readFileSync(path)), verbosity: 0 }).promise;
  const page = await pdf.getPage(1);
  const { items } = await page.getTextContent();
  const { info } = await pdf.getMetadata();
  return {
    text: items.map((item) => ('str' in item ? item.str : '')).join(' '),
    width: page.view[2]!,
    language: (info as { Language?: string }).Language,
  };
}

test('papers in Spanish for Mexico: its words, its paper; the command goes on in English', async () => {
  const folder = scratch();
  const { exit, out, err } = run(folder, ['report', story, '--out', 'r', '--region', 'es-MX']);
  expect([exit, err]).toEqual([0, '']);
  expect(out).toContain('for the care team');
  const papers = listed(join(folder, 'r'));
  const clinic = await opened(join(folder, 'r', papers.find((name) => name.endsWith('clinic-report.pdf'))!));
  // US Letter, 8.5 inches of 72 points (ANSI/ASME Y14.1).
  expect(clinic.width).toBe(612);
  expect(clinic.language).toMatch(/^es/);
  expect(clinic.text).toContain('En qué se fueron las horas');
  const draft = readFileSync(join(folder, 'r', papers.find((name) => name.endsWith('-interpretation.txt'))!), 'utf8');
  expect(draft).toContain('Borrador de interpretación');
  expect(draft).toMatch(/Se llegó a 72 horas: (sí|no)\./);
});

test('a paper size that is asked for stands before that of the region', async () => {
  const wanted = await settle({ region: 'es-MX', paper: 'a4' }, undefined, '2026-01-01');
  expect(wanted).toMatchObject({ paper: 'a4', place: { language: 'es', locale: 'es-MX' } });
});

test('language and region may stand in the settings file', async () => {
  const folder = scratch({ 'settings.json': JSON.stringify({ language: 'es', region: 'ES' }) });
  const wanted = await settle({}, join(folder, 'settings.json'), '2026-01-01');
  expect(wanted).toMatchObject({ paper: 'a4', place: { language: 'es', locale: 'es-ES', over: 'es-ES' } });
});

describe('what cannot be', () => {
  test.each([
    [['--language', 'fr'], '--language cannot be "fr". It can be: en, es.'],
    [['--region', 'fr-FR'], '--region cannot be "fr-FR". It can be: en-US'],
    [['--language', 'es', '--region', 'en-GB'], '--region cannot be "en-GB" with --language es. It can be: es-MX'],
  ])('%j', (options, said) => {
    const folder = scratch();
    const { exit, err } = run(folder, ['report', story, '--out', 'r', ...options]);
    expect(exit).toBe(64);
    expect(err).toContain(said);
    expect(listed(join(folder, 'r'))).toEqual([]);
  });
});

test('British English differs in spelling and forms only', () => {
  const british = paperWords(placeOf('en', 'GB')!);
  const american = paperWords(placeOf('en', 'US')!);
  expect([british.locale, american.locale]).toEqual(['en-GB', 'en-US']);
  expect(JSON.stringify(british)).toContain('Glycaemia');
  expect(JSON.stringify(american)).not.toMatch(/colour|glycaem/i);
  expect(paperWords(placeOf('en', 'GB')!)).toBe(british);
});

test('texts that no clinician has read are marked so on the paper', async () => {
  const folder = scratch();
  run(folder, ['report', story, '--out', 'r', '--language', 'es', '--html']);
  const html = readFileSync(join(folder, 'r', 'HL-104-clinic-report.html'), 'utf8');
  expect(html).toContain('Un profesional de salud aún no ha revisado los textos de seguridad de este informe.');
});
