import { readdirSync, readFileSync } from 'node:fs';
import { type Analysis, analyse } from '../../src/analyse.ts';
import type { Settings } from '../../src/model/settings.ts';

const home = new URL('../../', import.meta.url);

/**
 * Relative difference allowed. The two add up in another order and the figures carry twelve digits: 1e-9. Person 2320's
 * times are minutes cut off, and now and then two readings share a slot; the program gives each reading its true share
 * of the time (5.0004 minutes, less where the next follows sooner), the script counts every reading as 5 minutes: 0.5 %.
 */
export const PARTS = (source: string) => (source === 't1d-uom-2320' ? 5e-3 : 1e-9);

/** The files of a source, and what a person would say about them that the files do not. */
function given(source: string): { names: string[]; settings: Partial<Settings> } {
  if (source.startsWith('t1d-uom-')) {
    const name = `tests/data/t1d_uom/glucose-${source.slice(-4)}.csv`;
    return { names: [name], settings: { unit: 'mmol/L', dateOrder: 'day-first' } };
  }
  const path = `sample-data/${source}/`;
  const { zone } = JSON.parse(readFileSync(new URL(`${path}settings.json`, home), 'utf8'));
  const files = readdirSync(new URL(path, home)).filter((name) => /\.(csv|tsv)$/.test(name));
  return { names: files.map((name) => path + name), settings: zone === undefined ? {} : { zone } };
}

/** What the program makes of a source over the days of its figures. */
export function analysedSource(
  source: string,
  { from, to, set }: { from: string; to: string; set: Settings['targets'] },
  more: Partial<Settings> = {},
): Analysis {
  const { names, settings } = given(source);
  const inputs = names.map((name) => ({ name, bytes: readFileSync(new URL(name, home)) }));
  const analysis = analyse(
    inputs,
    {
      targets: set,
      today: '2026-11-01',
      person: {},
      period: { from, to },
      ...settings,
      ...more,
    },
    'test',
  );
  if (!analysis.ok) throw new Error(JSON.stringify(analysis.issues));
  return analysis;
}
