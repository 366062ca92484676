import type { Plugin } from 'esbuild';

/**
 * fontkit carries a decoder for web fonts with a dictionary of half a megabyte. Our faces are plain TrueType, and the
 * runtime has the same decoder built in.
 */
export const ownDecoder: Plugin = {
  name: 'own-decoder',
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^brotli\/decompress\.js$/ }, ({ path }) => ({ path, namespace: 'own-decoder' }));
    onLoad({ filter: /./, namespace: 'own-decoder' }, () => ({
      contents: "module.exports = (bytes) => require('node:zlib').brotliDecompressSync(bytes);",
    }));
  },
};

/** The same, where no runtime has such a decoder: there are no web fonts among our faces. */
export const noWebFonts: Plugin = {
  name: 'no-web-fonts',
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^brotli\/decompress\.js$/ }, ({ path }) => ({ path, namespace: 'no-web-fonts' }));
    onLoad({ filter: /./, namespace: 'no-web-fonts' }, () => ({
      contents: "module.exports = () => { throw new Error('web fonts are not read'); };",
    }));
  },
};

/**
 * Tables of character properties are kept packed, and their packages unpack them all while loading: a tenth of a cold
 * report. Here each is unpacked when it is first asked, which plain Latin text never does.
 */
export const lazyTables: Plugin = {
  name: 'lazy-tables',
  setup({ onResolve, onLoad, resolve }) {
    onResolve({ filter: /^unicode-trie$/ }, async ({ path, importer, resolveDir, kind, namespace }) => {
      if (namespace === 'lazy-tables') return undefined;
      const real = await resolve(path, { importer, resolveDir, kind, namespace: 'lazy-tables' });
      return { path: real.path, namespace: 'lazy-tables', pluginData: resolveDir };
    });
    onLoad({ filter: /./, namespace: 'lazy-tables' }, ({ path, pluginData }) => ({
      contents: `
        const Table = require(${JSON.stringify(path)});
        module.exports = class {
          constructor(packed) { this.packed = packed; }
          get(code) { return (this.table ??= new Table(this.packed)).get(code); }
        };`,
      resolveDir: pluginData,
    }));
  },
};

/** Called by few runs, but their modules compute or load much while they are loaded. */
const SELDOM: Record<string, string[]> = {
  '@noble/ciphers/aes': ['cbc', 'ecb'],
  'node:child_process': ['spawn'],
};

/** Functions of a module that is loaded when the first of them is called. */
export const loadedWhenCalled: Plugin = {
  name: 'loaded-when-called',
  setup({ onResolve, onLoad, resolve }) {
    onResolve({ filter: /^(@noble\/ciphers\/aes|node:child_process)$/ }, async (asked) => {
      const { path, importer, resolveDir, kind, namespace } = asked;
      if (namespace === 'loaded-when-called' || !importer.includes('node_modules')) return undefined;
      const real = await resolve(path, { importer, resolveDir, kind, namespace: 'loaded-when-called' });
      return { path, namespace: 'loaded-when-called', pluginData: { real: real.path, resolveDir } };
    });
    onLoad({ filter: /./, namespace: 'loaded-when-called' }, ({ path, pluginData: { real, resolveDir } }) => ({
      contents: SELDOM[path]!.map(
        (name) => `exports.${name} = (...given) => require(${JSON.stringify(real)}).${name}(...given);`,
      ).join('\n'),
      resolveDir,
    }));
  },
};
