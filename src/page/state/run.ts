import { bakedThresholds } from '../baked.ts';
import type { Extras } from '../folderMessages.ts';
import type { Run, State } from './state.ts';

export const EXTRAS: readonly Extras[] = ['further', 'html', 'numbers', 'fhir'];

/** A run over a folder before it begins: as the settings of the folder say, else as the clinic's copy of the page does. */
export async function newRun({ found, picked }: Pick<State, 'found' | 'picked'>): Promise<Run> {
  const { places = null, byVisit = false, thresholds, ...more } = found?.run ?? {};
  const file = picked.find(({ path }) => path === thresholds)?.file;
  return {
    ...{ at: 'no', stopped: false, ended: new Map(), listed: null, saved: '', tab: 'list', lacking: new Map() },
    ...{ order: byVisit ? 'visit' : 'pressing', places },
    thresholds: file ? { name: file.name, text: await file.text() } : bakedThresholds(),
    extras: EXTRAS.filter((name) => more[name]),
  };
}
