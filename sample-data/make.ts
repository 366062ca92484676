/**
 * Writes the files of every story: `npx tsx sample-data/make.ts [folder]`. The same bytes each time: no clock, seeded
 * chance. READMEs and settings are written by hand and left alone.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { autumnClockChange } from './making/autumn-clock-change.ts';
import { eveningExercise } from './making/evening-exercise.ts';
import { fourVisits } from './making/four-visits.ts';
import { longHighs } from './making/long-highs.ts';
import { pregnancy } from './making/pregnancy.ts';
import { steadyFortnight } from './making/steady-fortnight.ts';
import type { Story } from './making/story.ts';
import { thinData } from './making/thin-data.ts';

const STORIES: readonly Story[] = [
  steadyFortnight,
  eveningExercise,
  autumnClockChange,
  pregnancy,
  thinData,
  longHighs,
  fourVisits,
];

const target = process.argv[2] ?? import.meta.dirname;
for (const story of STORIES) {
  const folder = join(target, story.folder);
  for (const [name, bytes] of Object.entries(story.files())) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), bytes);
  }
}
