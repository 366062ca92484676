import { spawnSync } from 'node:child_process';
import { chmodSync, cpSync, mkdirSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type BuildOptions, build, type Plugin } from 'esbuild';
import { licenceText, packagesOf } from './licences.ts';

const home = fileURLToPath(new URL('../../', import.meta.url));
const fonts = join(home, 'node_modules/@expo-google-fonts/ibm-plex-sans');

/**
 * fontkit carries a decoder for web fonts with a dictionary of half a megabyte. Our faces are plain TrueType, and the
 * runtime has the same decoder built in.
 */
const ownDecoder: Plugin = {
  name: 'own-decoder',
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^brotli\/decompress\.js$/ }, ({ path }) => ({ path, namespace: 'own-decoder' }));
    onLoad({ filter: /./, namespace: 'own-decoder' }, () => ({
      contents: "module.exports = (bytes) => require('node:zlib').brotliDecompressSync(bytes);",
    }));
  },
};

/** One file for each way in. Cold, loading hundreds of small modules costs more than all the arithmetic of a report. */
const shared: BuildOptions = {
  absWorkingDir: home,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20.19',
  minify: true,
  legalComments: 'none',
  metafile: true,
  logLevel: 'warning',
  // jsdom finds its own files at run time, so it stays a package beside the bundle.
  external: ['jsdom'],
  plugins: [ownDecoder],
  // Packages of the older module form still ask for `require`.
  banner: { js: "import{createRequire as $require}from'node:module';const require=$require(import.meta.url);" },
};

// Built beside and moved into place, so that a command started meanwhile never finds half a program.
const next = join(home, 'dist.next');
rmSync(next, { recursive: true, force: true });
mkdirSync(join(next, 'fonts'), { recursive: true });
const built = await Promise.all([
  build({ ...shared, entryPoints: ['src/cli/daybands.ts'], outfile: join(next, 'daybands.js') }),
  build({ ...shared, entryPoints: ['src/index.ts'], outfile: join(next, 'index.js') }),
]);
chmodSync(join(next, 'daybands.js'), 0o755);
const inputs = built.flatMap(({ metafile }) => Object.keys(metafile?.inputs ?? {}));
writeFileSync(join(next, 'LICENCES.txt'), licenceText(home, packagesOf(inputs)));
cpSync(join(fonts, '400Regular/IBMPlexSans_400Regular.ttf'), join(next, 'fonts/IBMPlexSans-Regular.ttf'));
cpSync(join(fonts, '600SemiBold/IBMPlexSans_600SemiBold.ttf'), join(next, 'fonts/IBMPlexSans-SemiBold.ttf'));
cpSync(join(fonts, 'LICENSE_FONT'), join(next, 'fonts/LICENSE'));
const tsc = join(home, 'node_modules/typescript/bin/tsc');
// Declarations come out even of code with a type error; telling those is the business of `npm run check`.
spawnSync(process.execPath, [tsc, '-p', 'src/build/types.json', '--outDir', join(next, 'types')], { cwd: home });
rmSync(join(home, 'dist'), { recursive: true, force: true });
renameSync(next, join(home, 'dist'));
for (const file of ['daybands.js', 'index.js']) {
  console.log(`dist/${file}  ${Math.round(statSync(join(home, 'dist', file)).size / 1000)} kB`);
}
