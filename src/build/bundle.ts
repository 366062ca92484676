import { execFileSync } from 'node:child_process';
import { chmodSync, cpSync, mkdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type BuildOptions, build } from 'esbuild';

const home = fileURLToPath(new URL('../../', import.meta.url));
const fonts = `${home}node_modules/@expo-google-fonts/ibm-plex-sans`;

/** One file for each way in. Cold, loading hundreds of small modules costs more than all the arithmetic of a report. */
const shared: BuildOptions = {
  absWorkingDir: home,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20.19',
  minify: true,
  legalComments: 'linked',
  logLevel: 'warning',
  // jsdom finds its own files at run time, so it stays a package beside the bundle.
  external: ['jsdom'],
  // Packages of the older module form still ask for `require`.
  banner: {
    js: "import{createRequire as $require}from'node:module';const require=$require(import.meta.url);",
  },
};

// Built beside and moved into place, so that a command started meanwhile never finds half a program.
const next = `${home}dist.next`;
rmSync(next, { recursive: true, force: true });
mkdirSync(`${next}/fonts`, { recursive: true });
await Promise.all([
  build({ ...shared, entryPoints: ['src/cli/daybands.ts'], outfile: `${next}/daybands.js` }),
  build({ ...shared, entryPoints: ['src/index.ts'], outfile: `${next}/index.js` }),
]);
chmodSync(`${next}/daybands.js`, 0o755);
cpSync(`${fonts}/400Regular/IBMPlexSans_400Regular.ttf`, `${next}/fonts/IBMPlexSans-Regular.ttf`);
cpSync(`${fonts}/600SemiBold/IBMPlexSans_600SemiBold.ttf`, `${next}/fonts/IBMPlexSans-SemiBold.ttf`);
cpSync(`${fonts}/LICENSE_FONT`, `${next}/fonts/LICENSE`);
execFileSync(
  process.execPath,
  [`${home}node_modules/typescript/bin/tsc`, '-p', 'src/build/types.json', '--outDir', `${next}/types`],
  {
    cwd: home,
    stdio: 'inherit',
  },
);
rmSync(`${home}dist`, { recursive: true, force: true });
renameSync(next, `${home}dist`);
for (const file of ['daybands.js', 'index.js']) {
  console.log(`dist/${file}  ${Math.round(statSync(`${home}dist/${file}`).size / 1000)} kB`);
}
