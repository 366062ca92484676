import { type BuildOptions, build } from 'esbuild';
import { lazyTables, loadedWhenCalled, noWebFonts } from './plugins.ts';

/** What the core is made with, wherever it runs: no module of Node's, and the builds of its libraries that need none. */
export const anywhere: BuildOptions = {
  bundle: true,
  platform: 'browser',
  target: 'es2023',
  minify: true,
  charset: 'ascii',
  legalComments: 'none',
  metafile: true,
  logLevel: 'warning',
  plugins: [noWebFonts, lazyTables, loadedWhenCalled],
};

/**
 * The library as one classic script for a page or a worker, which finds it under the name `daybands`. Whatever of Node
 * crept into it fails the build.
 */
export async function bundleCore(home: string): Promise<string> {
  const built = await build({
    ...anywhere,
    absWorkingDir: home,
    format: 'iife',
    globalName: 'daybands',
    // A script from a Blob has no address; the PDF library only names files of its own by it.
    define: { 'import.meta.url': '"file:///daybands/"' },
    entryPoints: ['src/index.ts'],
    write: false,
  });
  return built.outputFiles[0]!.text;
}
