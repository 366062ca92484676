import { join } from 'node:path';
import { gather } from '../../src/cli/gather.ts';
import { settle } from '../../src/cli/settings.ts';
import type { Input } from '../../src/model/input.ts';
import type { Settings } from '../../src/model/settings.ts';
import { home } from './story.ts';

/** What the library is given of a story: its files, and its settings without what the program brings along itself. */
export async function givenOf(story: string): Promise<{ inputs: Input[]; settings: Settings }> {
  const { inputs, settingsPath } = gather([join(home, 'sample-data', story)]);
  const wanted = await settle({}, settingsPath, '2026-01-01');
  if ('issues' in wanted) throw new Error(JSON.stringify(wanted.issues));
  const { logWords: _, medicines: __, ...settings } = wanted.settings;
  return { inputs, settings };
}
