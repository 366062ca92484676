import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Analysis, analyse } from '../../src/analyse.ts';
import { compose } from '../../src/compose.ts';
import type { Settings } from '../../src/model/settings.ts';
import { asPrinted } from '../../src/writers/pdf/index.ts';
import { analyseStory, held, storyNames } from '../samples/stories.ts';
import { CROWD } from '../support/crowd.ts';
import { touchingIn } from '../support/geometry.ts';
import { fonts, wordsOf } from '../support/story.ts';
import { open, write } from '../writers/paper.ts';

/**
 * `npx tsx tests/looks/fit.ts [folder of shared datasets] [--keep folder]`: every invented story, every stress person and every
 * real person, in both languages on both papers: sides, words, and what touches.
 */
const args = process.argv.slice(2);
const keepAt = args.indexOf('--keep');
const keep = keepAt < 0 ? null : args.splice(keepAt, 2)[1]!;
const onlyAt = args.indexOf('--only');
const only = onlyAt < 0 ? null : new RegExp(args.splice(onlyAt, 2)[1]!);
const combosAt = args.indexOf('--combos');
const combos = combosAt < 0 ? null : new RegExp(args.splice(combosAt, 2)[1]!);
const folder = args[0];
if (keep) mkdirSync(keep, { recursive: true });

const REAL: [string, string[], Partial<Settings>][] = [
  ['bigideas 001', ['bigideas/001.csv', 'bigideas/Food_Log_001.csv'], {}],
  ['bigideas 002', ['bigideas/002.csv', 'bigideas/Food_Log_002.csv'], {}],
  ['bigideas 006', ['bigideas/006.csv', 'bigideas/Food_Log_006.csv'], {}],
  ['hupa 0011', ['hupa_ucm/HUPA0011P.csv'], {}],
  ['hupa 0015', ['hupa_ucm/HUPA0015P.csv'], {}],
  [
    't1d 2314',
    ['Basal', 'Bolus', 'Glucose', 'Nutrition', 'Activity'].map((n) => `t1d_uom/UoM${n}2314.csv`),
    { unit: 'mmol/L', dateOrder: 'day-first' },
  ],
  [
    't1d 2320',
    ['Bolus', 'Glucose', 'Nutrition'].map((n) => `t1d_uom/UoM${n}2320.csv`),
    { unit: 'mmol/L', dateOrder: 'day-first' },
  ],
  [
    't1d 2404',
    ['Bolus', 'Glucose', 'Nutrition'].map((n) => `t1d_uom/UoM${n}2404.csv`),
    { unit: 'mmol/L', dateOrder: 'day-first' },
  ],
];
function* everyone(): Generator<[string, () => Analysis]> {
  for (const story of storyNames) yield [story, () => held(analyseStory(story))];
  for (const { name, make } of CROWD) yield [name, make];
  if (folder)
    for (const days of [14, 28])
      for (const [name, files, more] of REAL)
        yield [
          `${name} ${days}`,
          () =>
            held(
              analyse(
                files.map((file) => ({ name: file.split('/')[1]!, bytes: readFileSync(join(folder, file)) })),
                { targets: 'adult', today: '2026-11-01', period: { days }, person: {}, ...more },
                'test',
              ),
            ),
        ];
}
for (const [name, make] of everyone()) {
  if (only && !only.test(name)) continue;
  let analysis: Analysis;
  try {
    analysis = make();
  } catch (error) {
    console.log(name, 'refused', String(error).slice(0, 300));
    continue;
  }
  for (const language of ['en', 'es'] as const)
    for (const paper of ['a4', 'letter'] as const)
      for (const kind of ['clinic', 'patient', 'large'] as const) {
        const id = `${language}-${paper}-${kind}`;
        if (combos && !combos.test(id)) continue;
        const voice = kind === 'clinic' ? 'clinic' : 'patient';
        const report = compose(analysis, wordsOf(language), { voice, paper, large: kind === 'large' });
        const bytes = await write(report);
        const file = await open(bytes);
        const words = file.sheets.reduce((sum, { text }) => sum + text.split(/\s+/).filter((w) => w !== '').length, 0);
        const printed = asPrinted(report, fonts(), { version: 'test' });
        const touches = touchingIn(printed);
        console.log(`${name} | ${id} | sides ${file.sheets.length} | words ${words} | touching ${touches.length}`);
        for (const t of touches.slice(0, 12)) console.log(`    ${t}`);
        if (keep) {
          writeFileSync(join(keep, `${name.replaceAll(' ', '-')}_${id}.pdf`), bytes);
          writeFileSync(join(keep, `${name.replaceAll(' ', '-')}_${id}_grey.pdf`), await write(report, { grey: true }));
        }
      }
}
