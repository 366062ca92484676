import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { bundleCore } from './core.ts';

/** `npm run core [file]`: the library as one classic script, for a page or a worker of a browser. */
const home = fileURLToPath(new URL('../../', import.meta.url));
const file = process.argv[2] ?? 'out/daybands-core.js';
const script = await bundleCore(home);
mkdirSync(dirname(file), { recursive: true });
writeFileSync(file, script);
console.log(`${file}  ${Math.round(script.length / 1000)} kB`);
