import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Analysis, analyse } from '../../src/analyse.ts';
import { gather } from '../../src/cli/gather.ts';
import { settle } from '../../src/cli/settings.ts';

export const home = fileURLToPath(new URL('../..', import.meta.url));

/** Names of the invented stories in sample-data. */
export const stories = readdirSync(join(home, 'sample-data')).filter((name) =>
  existsSync(join(home, 'sample-data', name, 'settings.json')),
);

/** Words of a language as parsed JSON. */
export const wordsOf = (language = 'en'): unknown =>
  JSON.parse(readFileSync(join(home, `templates/words/${language}.json`), 'utf8'));

type Asked = { days?: number; moreIndices?: boolean; a1c?: string };
const asItStands = new Map<string, Promise<Analysis>>();

/** A story's analysis, made as the report command makes it: once where nothing more is asked. */
export function analysisOf(story: string, asked?: Asked): Promise<Analysis> {
  if (asked) return analysed(story, asked);
  const known = asItStands.get(story) ?? analysed(story, {});
  asItStands.set(story, known);
  return known;
}

async function analysed(story: string, asked: Asked): Promise<Analysis> {
  const { inputs, settingsPath } = gather([join(home, 'sample-data', story)]);
  const wanted = await settle(asked, settingsPath, '2026-01-01');
  if ('issues' in wanted) throw new Error(JSON.stringify(wanted.issues));
  const analysis = analyse(inputs, wanted.settings, 'golden');
  if (!analysis.ok) throw new Error(JSON.stringify(analysis.issues));
  return analysis;
}

/** The faces of the papers, from their package. */
export function fonts() {
  const face = (name: string) => readFileSync(join(home, `node_modules/@expo-google-fonts/ibm-plex-sans/${name}`));
  return {
    regular: face('400Regular/IBMPlexSans_400Regular.ttf'),
    semibold: face('600SemiBold/IBMPlexSans_600SemiBold.ttf'),
  };
}
