import { readFileSync } from 'node:fs';
import { type Analysis, analyse } from '../../src/analyse.ts';
import { logWords } from '../../src/cli/logWords.ts';
import type { Settings } from '../../src/model/settings.ts';
import { type Stress, stressAnalysis } from './stressPeople.ts';

/** Somebody whose data fill the papers to their edges, or leave them all but empty. */
export interface Somebody {
  name: string;
  make(): Analysis;
  /** Fewer than 72 hours, or no night: one sheet. */
  thin: boolean;
}

const LONG = 'x'.repeat(40);
const INVENTED: Record<string, Stress> = {
  'a fortnight': { days: 14 },
  'a low every evening of 28 days': { days: 28, lowEvenings: true },
  'a very low every evening of 28 days': { days: 28, lowEvenings: true, veryLow: true },
  'a low every evening, and 200 remarks': { days: 28, lowEvenings: true, remarks: 200 },
  'names of 40 letters': {
    days: 14,
    lowEvenings: true,
    letters: 40,
    person: { name: LONG, code: LONG, clinic: LONG, phone: '+1 555 0100 or 555 0101, 8 AM to 6 PM' },
  },
  'the rates of a pump': { days: 14, rates: true, lowEvenings: true },
  'small doses every hour': { days: 14, smallDoses: true },
  'all movements of a wrist': { days: 14, wrist: true, lowEvenings: true },
  'one day': { days: 1 },
  '2 days': { days: 2 },
  '3 days': { days: 3, lowEvenings: true },
  '5 days': { days: 5, lowEvenings: true },
  '9 days': { days: 9, lowEvenings: true },
  'three weeks': { days: 21, lowEvenings: true },
  '90 days': { days: 90, lowEvenings: true },
  '365 days': { days: 365, step: 15, lowEvenings: true },
  'no nights': { days: 14, noNights: true, lowEvenings: true },
  'five hours a day': { days: 14, hours: 5 },
  'five hours a day, and rows that could not be used': {
    days: 14,
    hours: 5,
    faulty: 90,
    lowEvenings: true,
    remarks: 40,
  },
  'a fortnight beside the one before': { days: 28, lowEvenings: true, remarks: 60, compared: true },
  'rows that could not be used': { days: 14, faulty: 90, lowEvenings: true },
};
const THIN = /^(one day|2 days|no nights|five hours a day.*)$/;

type Files = [names: string[], settings: Partial<Settings>];
const UOM: Partial<Settings> = { unit: 'mmol/L', dateOrder: 'day-first' };
const uom = (person: string, kinds: string[]): Files => [kinds.map((kind) => `t1d_uom/${kind}-${person}.csv`), UOM];
/** Real people, from excerpts with their licences in tests/data. */
const REAL: Record<string, Files> = {
  't1d_uom 2314': uom('2314', ['glucose', 'nutrition', 'bolus', 'basal', 'activity']),
  't1d_uom 2320': uom('2320', ['glucose', 'nutrition', 'bolus']),
  't1d_uom 2404': uom('2404', ['glucose', 'nutrition', 'bolus']),
  'hupa_ucm 0011': [['hupa_ucm/HUPA0011P.csv'], {}],
  'hupa_ucm 0015': [['hupa_ucm/HUPA0015P.csv'], {}],
  'bigideas 001': [['bigideas/001.csv', 'bigideas/Food_Log_001.csv'], {}],
  'bigideas 006': [['bigideas/006.csv', 'bigideas/Food_Log_006.csv'], {}],
};
const SHORT = ['hupa_ucm 0011', 'bigideas 001'];

function real([names, settings]: Files): Analysis {
  const inputs = names.map((name) => ({
    name: name.split('/')[1]!,
    bytes: readFileSync(new URL(`../data/${name}`, import.meta.url)),
  }));
  const result = analyse(
    inputs,
    { targets: 'adult', today: '2026-11-01', period: { days: 14 }, person: {}, logWords: logWords(), ...settings },
    'test',
  );
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result;
}

/** Each made when first asked for, and once. */
function once(make: () => Analysis): () => Analysis {
  let kept: Analysis | undefined;
  return () => {
    kept ??= make();
    return kept;
  };
}

export const CROWD: readonly Somebody[] = [
  ...Object.entries(INVENTED).map(([name, stress]) => ({
    name,
    make: once(() => stressAnalysis(stress)),
    thin: THIN.test(name),
  })),
  ...Object.entries(REAL).map(([name, files]) => ({
    name,
    make: once(() => real(files)),
    thin: SHORT.includes(name),
  })),
];
