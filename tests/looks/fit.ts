import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { type Analysis, analyse } from '../../src/analyse.ts';
import { logWords } from '../../src/cli/logWords.ts';
import { compose } from '../../src/compose.ts';
import type { Report } from '../../src/model/report.ts';
import type { Settings } from '../../src/model/settings.ts';
import { asPrinted } from '../../src/writers/pdf/index.ts';
import { held } from '../samples/stories.ts';
import { CROWD } from '../support/crowd.ts';
import { everyMessage } from '../support/everyMessage.ts';
import { touchingIn } from '../support/geometry.ts';
import { collisions } from '../support/pieces.ts';
import { words } from '../support/readability.ts';
import { passages } from '../support/running.ts';
import { analysisOf, fonts, stories, wordsOf } from '../support/story.ts';
import { openSheets, write } from '../writers/paper.ts';

/**
 * `npx tsx tests/looks/fit.ts [folder of the shared datasets] [folder to keep the papers in] [names]`: sides, words and what touches
 * of every story, every one of the crowd and every real person, in both languages on both papers; the table of docs/looks.md.
 */
const [datasets = '', keep = '', names = ''] = process.argv.slice(2);
if (keep !== '') mkdirSync(keep, { recursive: true });

const UOM: Partial<Settings> = { unit: 'mmol/L', dateOrder: 'day-first' };
const uom = (person: string, ...kinds: string[]): [string[], Partial<Settings>] => [
  kinds.map((kind) => `t1d_uom/UoM${kind}${person}.csv`),
  UOM,
];
const ideas = (person: string): [string[], Partial<Settings>] => [
  [`bigideas/${person}.csv`, `bigideas/Food_Log_${person}.csv`],
  {},
];
const SHARED: Record<string, [files: string[], settings: Partial<Settings>]> = {
  'bigideas 001': ideas('001'),
  'bigideas 002': ideas('002'),
  'bigideas 006': ideas('006'),
  'hupa_ucm 0011': [['hupa_ucm/HUPA0011P.csv'], {}],
  'hupa_ucm 0015': [['hupa_ucm/HUPA0015P.csv'], {}],
  't1d_uom 2314': uom('2314', 'Basal', 'Bolus', 'Glucose', 'Nutrition', 'Activity'),
  't1d_uom 2320': uom('2320', 'Bolus', 'Glucose', 'Nutrition'),
  't1d_uom 2404': uom('2404', 'Bolus', 'Glucose', 'Nutrition'),
};

function shared([files, settings]: [string[], Partial<Settings>], days: number): Analysis {
  const inputs = files.map((file) => ({ name: basename(file), bytes: readFileSync(join(datasets, file)) }));
  const usual = { targets: 'adult', today: '2026-11-01', person: {}, logWords: logWords() } as const;
  return held(analyse(inputs, { ...usual, period: { days }, ...settings }, 'test'));
}

function everyone(): { name: string; make(): Analysis | Promise<Analysis> }[] {
  const real = datasets === '' ? [] : Object.entries(SHARED);
  return [
    ...stories.map((name) => ({ name, make: () => analysisOf(name) })),
    ...CROWD,
    ...real.flatMap(([name, files]) =>
      [14, 28].map((days) => ({ name: `whole ${name}, ${days} days`, make: () => shared(files, days) })),
    ),
  ].filter(({ name }) => new RegExp(names).test(name));
}

type Cautions = { cautions: { clinicMethod: string } };

/** All that is printed on the two sheets, figures of charts too, but for the locked caution. */
const clinicWords = (sheets: { text: string }[], language: string): number =>
  sheets.flatMap(({ text }) => text.split(/\s+/).filter((one) => one !== '')).length -
  (wordsOf(language) as Cautions).cautions.clinicMethod.split(' ').length;

/** Words of its own: headings and running text without the locked cautions. */
function personWords(printed: Report, language: string): number {
  const { cautions } = wordsOf(language) as Cautions;
  const locked = new Set(everyMessage({ cautions }).map(([, text]) => text));
  return passages(printed, locked).reduce((sum, of) => sum + words(of.title).length + words(of.text).length, 0);
}

/** One paper: its sides but for the sheet of remarks, its words, and all that touches on it. */
async function looked(name: string, analysis: Analysis, kind: string, language: string, paper: 'a4' | 'letter') {
  const voice = kind === 'clinic' ? 'clinic' : 'patient';
  const whole = compose(analysis, wordsOf(language), { voice, paper, large: kind === 'large' });
  const report = { ...whole, pages: whole.pages.filter(({ id }) => id !== 'remarks') };
  const { sheets } = await openSheets(await write(report));
  if (keep !== '')
    for (const grey of [false, true])
      writeFileSync(
        join(keep, `${name.replaceAll(/\W+/g, '-')}_${kind}_${language}_${paper}${grey ? '_grey' : ''}.pdf`),
        await write(whole, { grey }),
      );
  const printed = asPrinted(report, fonts(), { version: 'test' });
  return {
    sides: sheets.length,
    words: kind === 'clinic' ? clinicWords(sheets, language) : personWords(printed, language),
    touching: [
      ...touchingIn(printed),
      ...(kind === 'clinic' ? sheets.flatMap(({ pieces }) => collisions(pieces)) : []),
    ],
  };
}

console.log(
  '| whose | clinic, person, large print: sides in en A4, en Letter, es A4, es Letter | words clinic, person: en, es | touching |',
);
console.log('|---|---|---|---|');
for (const { name, make } of everyone()) {
  const analysis = await make();
  const touching: string[] = [];
  const counted: Record<string, number[]> = { clinic: [], person: [] };
  const sides: string[] = [];
  for (const kind of ['clinic', 'person', 'large']) {
    const each: number[] = [];
    for (const language of ['en', 'es'])
      for (const paper of ['a4', 'letter'] as const) {
        const paperOf = await looked(name, analysis, kind, language, paper);
        each.push(paperOf.sides);
        touching.push(...paperOf.touching);
        if (paper === 'a4') counted[kind]?.push(paperOf.words);
      }
    sides.push(each.join(' '));
  }
  console.log(
    `| ${name} | ${sides.join(', ')} | ${counted.clinic!.join(', ')}; ${counted.person!.join(', ')} | ${touching.length} |`,
  );
  for (const one of touching) console.error(`${name}: ${one}`);
}
