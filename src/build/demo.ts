import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Makes both papers of every invented story with the built command, as anyone would, and says where they are. */
const home = fileURLToPath(new URL('../../', import.meta.url));
const stories = readdirSync(join(home, 'sample-data')).filter((name) =>
  existsSync(join(home, 'sample-data', name, 'settings.json')),
);
let failed = 0;
for (const story of stories) {
  console.log(`\n== ${story} (invented)`);
  const run = spawnSync(
    process.execPath,
    ['dist/daybands.js', 'report', `sample-data/${story}`, '--out', `out/${story}`],
    {
      cwd: home,
      stdio: 'inherit',
    },
  );
  // Some stories are there to be refused: then nothing may have been written.
  if (run.status !== 0 && !(run.status === 1 && !existsSync(join(home, 'out', story)))) failed++;
}
console.log(`\n${stories.length} stories; the papers are in ${join(home, 'out')}`);
process.exitCode = failed === 0 ? 0 : 1;
