import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type BuildOptions, build } from 'esbuild';
import manifest from '../../package.json' with { type: 'json' };
import { fingerprint } from '../bytes/hash.ts';
import { anywhere } from './core.ts';
import { copyFonts } from './fonts.ts';
import { licenceText, packagesOf } from './licences.ts';
import { buildPage } from './page.ts';
import { lazyTables, loadedWhenCalled, ownDecoder } from './plugins.ts';
import { keepSchemas } from './schemas.ts';
import { keepTemplate } from './templates.ts';

const PAGE = 'daybands.html';
const home = fileURLToPath(new URL('../../', import.meta.url));

// These find files of their own at run time, or are asked for by few: they stay packages beside the bundle. zod is bundled,
// which makes the start short; it is a dependency because the library's types name it.
const external = Object.keys(manifest.dependencies).filter((name) => name !== 'zod');

/** One file for each way in. Cold, loading hundreds of small modules costs more than all the arithmetic of a report. */
const shared: BuildOptions = {
  absWorkingDir: home,
  bundle: true,
  platform: 'node',
  target: 'node20.19',
  minify: true,
  charset: 'ascii',
  legalComments: 'none',
  metafile: true,
  logLevel: 'warning',
  external,
  // Made for browsers, it loads no threads.
  alias: { fflate: 'fflate/browser' },
  plugins: [ownDecoder, lazyTables, loadedWhenCalled],
};
const script: BuildOptions = {
  format: 'cjs',
  // The engine's loader of modules costs a start 5 ms more than the older one. And a program taken from a cache of another
  // process cannot import: what it asks for late it requires instead.
  supported: { 'dynamic-import': false },
  define: { 'import.meta.url': '$url' },
  banner: { js: "const $url=require('node:url').pathToFileURL(__filename).href;" },
};

// Built beside and moved into place, so that a command started meanwhile never finds half a program.
const next = join(home, 'dist.next');
const into = (name: string): string => join(next, name);
rmSync(next, { recursive: true, force: true });
mkdirSync(next, { recursive: true });
const built = await Promise.all([
  build({ ...shared, ...script, entryPoints: ['src/cli/start.ts'], outfile: into('daybands.js') }),
  build({ ...shared, ...script, entryPoints: ['src/cli/daybands.ts'], outfile: into('program.cjs') }),
  build({ ...shared, ...script, entryPoints: ['src/cli/clinic/thread.ts'], outfile: into('thread.js') }),
  // For any engine: Node, a browser, whatever bundles it again. What is heavy stands in pieces of its own.
  build({
    ...anywhere,
    absWorkingDir: home,
    external,
    format: 'esm',
    splitting: true,
    entryPoints: ['src/index.ts'],
    outdir: next,
    outExtension: { '.js': '.mjs' },
    chunkNames: 'library/[name]-[hash]',
  }),
]);
for (const script of ['program.cjs', 'thread.js']) spellOut(into(script));
chmodSync(into('daybands.js'), 0o755);
// What the engine takes files for that end in .js: scripts here, and the library's types modules.
mkdirSync(into('types'));
writeFileSync(into('package.json'), '{"type":"commonjs"}\n');
writeFileSync(into('types/package.json'), '{"type":"module"}\n');
copyFonts(home, into('fonts'));
keepSchemas(into('schemas'));
const page = await buildPage(home, await keepTemplate(home, next), new Date().toISOString().slice(0, 10));
writeFileSync(into(PAGE), page.html);
// For whoever is given a copy of it.
writeFileSync(into(`${PAGE}.sha256`), `${fingerprint(page.html)}  ${PAGE}\n`);
const inputs = [...built.map(({ metafile }) => metafile), page.worker].flatMap((one) => Object.keys(one?.inputs ?? {}));
writeFileSync(into('LICENCES.txt'), licenceText(home, packagesOf(inputs)));
// Declarations come out even of code with a type error; telling those is the business of `npm run check`.
const tsc = join(home, 'node_modules/typescript/bin/tsc');
spawnSync(process.execPath, [tsc, '-p', 'src/build/types.json', '--outDir', into('types')], { cwd: home });
rmSync(join(home, 'dist'), { recursive: true, force: true });
renameSync(next, join(home, 'dist'));
warm();
for (const file of ['program.cjs', 'index.mjs', PAGE]) {
  console.log(`dist/${file}  ${Math.round(statSync(join(home, 'dist', file)).size / 1000)} kB`);
}

/** The command's program is loaded as a text of one byte a letter; the packer spells out what is beyond them in strings, not in patterns. */
function spellOut(path: string): void {
  const code = (unit: string): string => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`;
  writeFileSync(path, readFileSync(path, 'utf8').replaceAll(/[^\0-\x7f]/g, code));
}

/** Makes one report, so that the command starts with what the engine compiled for it. Without, it only starts slower. */
function warm(): void {
  const [program, cache, out] = [
    join(home, 'dist/program.cjs'),
    join(home, 'dist/program.cache'),
    join(tmpdir(), `daybands-${process.pid}`),
  ];
  const args = [program, cache, 'report', join(home, 'sample-data/steady-fortnight'), '--language', 'es', '--out', out];
  const ran = spawnSync(process.execPath, ['--import', 'tsx', join(home, 'src/build/warm.ts'), ...args], { cwd: home });
  rmSync(out, { recursive: true, force: true });
  if (ran.status !== 0) console.error(`The program was warmed in part only: ${ran.stderr}`);
}
