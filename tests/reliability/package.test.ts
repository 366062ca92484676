import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { home } from '../cli/run.ts';

const manifest = JSON.parse(readFileSync(join(home, 'package.json'), 'utf8')) as {
  version: string;
  dependencies: Record<string, string>;
};
const lock = JSON.parse(readFileSync(join(home, 'package-lock.json'), 'utf8')) as {
  lockfileVersion: number;
  packages: Record<string, Locked>;
};
interface Locked {
  version?: string;
  resolved?: string;
  integrity?: string;
  license?: string;
  dev?: boolean;
  link?: boolean;
  hasInstallScript?: boolean;
}
const locked = Object.entries(lock.packages).filter(([path]) => path !== '');

/** Licences that ask no more than to be passed on with the code (and, for typefaces, that the name stays apart). */
const ALLOWED = new Set(
  'MIT ISC Apache-2.0 BSD-2-Clause BSD-3-Clause 0BSD MIT-0 BlueOak-1.0.0 CC0-1.0 OFL-1.1 Unlicense Python-2.0'.split(
    ' ',
  ),
);
/** Packages that tell their licence in a file only; each was read. */
const READ_BY_HAND: Record<string, string> = {
  'dejavu-fonts-ttf': 'Bitstream Vera and Arev licence: free to use, embed and pass on',
  'png-js': 'MIT',
};

describe('what others wrote', () => {
  test('the lock file names every package by hash, and by no address but the registry of npm', () => {
    expect(lock.lockfileVersion).toBe(3);
    const loose = locked.filter(
      ([, { integrity, resolved, link }]) =>
        link === true ||
        !/^sha512-[\w+/]{86}==$/.test(integrity ?? '') ||
        !(resolved === undefined || resolved.startsWith('https://registry.npmjs.org/')),
    );
    expect(loose).toEqual([]);
  });

  test('everything that is shipped or installed with it has a licence of the list', () => {
    const shipped = locked.filter(([, { dev }]) => dev !== true);
    expect(shipped.length).toBeGreaterThan(0);
    const unknown = shipped.flatMap(([path, { license }]) => {
      const name = path.replace(/^.*node_modules\//, '');
      const installed = join(home, path, 'package.json');
      const own = existsSync(installed) ? JSON.parse(readFileSync(installed, 'utf8')).license : undefined;
      const licenses = (license ?? own ?? '').replace(/[()]/g, '').split(/ (?:AND|OR) /);
      return licenses.every((one: string) => ALLOWED.has(one)) || name in READ_BY_HAND
        ? []
        : [`${name}: ${licenses.join()}`];
    });
    expect(unknown).toEqual([]);
  });

  test('the licences in dist are those of the packages in the program', () => {
    const text = readFileSync(join(home, 'dist/LICENCES.txt'), 'utf8');
    const heads = text.split(/\n-{70,}\n/).flatMap((part) => part.trim().split('\n\n')[0]!.split('\n'));
    expect(heads.length).toBeGreaterThan(5);
    for (const head of heads) {
      const [, name, version] = /^((?:@[^/]+\/)?\S+) (\S+?)(?::|$)/.exec(head)!;
      const found = locked.filter(([path]) => path.endsWith(`node_modules/${name}`)).map(([, one]) => one.version);
      expect(found, head).toContain(version);
    }
  });

  test('no install script of a package is needed', () => {
    const scripts = locked.filter(([, { hasInstallScript, dev }]) => hasInstallScript && !dev).map(([path]) => path);
    const { allowScripts } = JSON.parse(readFileSync(join(home, 'package.json'), 'utf8'));
    for (const path of scripts) expect(allowScripts[path.replace(/^.*node_modules\//, '')], path).toBe(false);
  });
});

const npm = (folder: string, ...args: string[]): string =>
  execFileSync('npm', args, {
    cwd: folder,
    encoding: 'utf8',
    // Its own cache is used first; with nothing in it, the registry is asked, once.
    env: {
      ...process.env,
      npm_config_prefer_offline: 'true',
      npm_config_audit: 'false',
      npm_config_fund: 'false',
      npm_config_fetch_retries: '0',
      npm_config_fetch_timeout: '60000',
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });

/** What the library itself looks for only when a workbook is opened. */
const OUTSIDE = ['--external:read-excel-file', '--external:@e965/xlsx'];

/** npm's words for what it did not have and nobody gave it. */
const NO_ANSWER =
  /ENOTCACHED|ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ETIMEDOUT|ENETUNREACH|EHOSTUNREACH|E(403|405|50\d)/;

/** The program, its templates and faces, and nothing else. */
const CONTENTS = [
  /^(README\.md|LICENSE|package\.json)$/,
  /^dist\/(daybands\.js|program\.cjs|program\.cache|thread\.js|index\.mjs|page\.json|LICENCES\.txt|daybands\.html(\.sha256)?)$/,
  /^dist\/library\/[\w-]+\.mjs$/,
  // Says which of the scripts are modules.
  /^dist\/(types\/)?package\.json$/,
  /^dist\/fonts\/[\w-]+(\.ttf|\.otf|\.cut)?$/,
  /^dist\/schemas\/\w+\.schema\.json$/,
  /^dist\/types\/[\w/.-]+\.d\.ts$/,
  /^templates\/(words\/[\w-]+\.json|(foods|medicines|topics)\.json|page\.html|page\.css)$/,
];

interface Packed {
  folder: string;
  filename: string;
  files: { path: string; size: number }[];
}

let once: Packed | undefined;
afterAll(() => once && rmSync(once.folder, { recursive: true, force: true }), 120_000);

/** The tarball, in a folder that is gone at the end; packed for whichever test asks first. */
function packed(): Packed {
  if (once) return once;
  const folder = mkdtempSync(join(tmpdir(), 'daybands-package-'));
  const [archive] = JSON.parse(npm(home, 'pack', '--ignore-scripts', '--json', '--pack-destination', folder)) as [
    Omit<Packed, 'folder'>,
  ];
  once = { folder, ...archive };
  return once;
}

describe('the package', () => {
  test('holds what it needs, and nothing else', { timeout: 120_000 }, () => {
    const { filename, files } = packed();
    expect(filename).toBe(`daybands-${manifest.version}.tgz`);
    expect(files.filter(({ path }) => !CONTENTS.some((kind) => kind.test(path)))).toEqual([]);
    for (const kind of CONTENTS) expect(files.some(({ path }) => kind.test(path))).toBe(true);
    expect(files.reduce((sum, { size }) => sum + size, 0)).toBeLessThan(30e6);
  });

  test('installs from its tarball in an empty folder, runs as a command, and is a library with types', {
    timeout: 600_000,
  }, ({ skip }) => {
    const { folder, filename } = packed();
    const prefix = join(folder, 'machine');
    // As `npm install --global` would, with a folder of its own instead of the machine's.
    try {
      npm(folder, 'install', '--global', '--prefix', prefix, '--ignore-scripts', join(folder, filename));
    } catch (error) {
      const [unanswered] = NO_ANSWER.exec(String((error as { stderr?: unknown }).stderr)) ?? [];
      if (unanswered === undefined) throw error;
      skip(`the packages it depends on are not in npm's cache, and no registry gave them (${unanswered})`);
    }
    cpSync(join(home, 'sample-data/steady-fortnight'), join(folder, 'story'), { recursive: true });
    cpSync(join(home, 'sample-data/steady-fortnight'), join(folder, 'people/a'), { recursive: true });
    const run = (...args: string[]) =>
      spawnSync(join(prefix, 'bin/daybands'), args, { cwd: folder, encoding: 'utf8', timeout: 60_000 });

    expect(run('--version').stdout.trim()).toBe(manifest.version);
    const report = run('report', 'story', '--out', 'papers', '--html', '--snapshot');
    expect(report.stderr).toBe('');
    expect(report.status).toBe(0);
    const papers = readdirSync(join(folder, 'papers'));
    for (const ending of ['clinic-report.pdf', 'patient-paper.html', 'analysis.json']) {
      expect(papers.some((name) => name.endsWith(ending))).toBe(true);
    }
    // Worker threads are a package beside the program.
    expect(run('clinic', 'people', '--out', 'papers-of-all').status).toBe(0);

    const project = join(folder, 'library');
    mkdirSync(join(project, 'node_modules'), { recursive: true });
    cpSync(join(prefix, 'lib/node_modules'), join(project, 'node_modules'), { recursive: true });
    writeFileSync(join(project, 'package.json'), '{ "type": "module" }');
    // The program of the page on the library, as it stands there.
    const [, program] = /```ts\n([\s\S]*?)```/.exec(readFileSync(join(home, 'docs/library.md'), 'utf8'))!;
    writeFileSync(join(project, 'use.ts'), program!);
    for (const name of ['readings.csv', 'logbook.csv']) cpSync(join(folder, 'story', name), join(project, name));
    const strict = ['--noEmit', '--strict', '--module', 'nodenext', '--target', 'es2023', '--types', 'node'];
    const types = ['--typeRoots', join(home, 'node_modules/@types')];
    execFileSync(join(home, 'node_modules/.bin/tsc'), [...strict, ...types, 'use.ts'], { cwd: project });
    const asked = ['--name', 'Ana', '--code', 'HL-104', '--date', '2026-01-27', '--days', '14', '--targets', 'adult'];
    mkdirSync(join(folder, 'bare'));
    for (const name of ['readings.csv', 'logbook.csv']) cpSync(join(folder, 'story', name), join(folder, 'bare', name));
    expect(run('report', 'bare', ...asked, '--out', 'command').status).toBe(0);
    const numbers = readFileSync(join(folder, 'command/HL-104-analysis.json'), 'utf8');
    const { hash, measures } = JSON.parse(numbers);
    const share = measures.timeInBands.value.exclusiveShare['in-range'].value;
    // In Node as its types are taken off, and bundled with the library in it.
    const options = ['--format=esm', '--platform=node', '--target=node20'];
    const esbuild = (...more: string[]) =>
      execFileSync(join(home, 'node_modules/.bin/esbuild'), ['use.ts', ...options, ...more], { cwd: project });
    esbuild('--outfile=plain.js');
    esbuild('--bundle', '--splitting', '--outdir=bundled', '--out-extension:.js=.mjs', ...OUTSIDE);
    for (const built of ['plain.js', 'bundled/use.mjs']) {
      for (const paper of ['clinic.pdf', 'patient.pdf', 'analysis.json']) rmSync(join(project, paper), { force: true });
      const used = spawnSync(process.execPath, [built], { cwd: project, encoding: 'utf8', timeout: 60_000 });
      expect([used.stdout.trim(), used.status]).toEqual([`time in range ${share} hash ${hash}`, 0]);
      expect(readFileSync(join(project, 'analysis.json'), 'utf8')).toBe(numbers);
      for (const voice of ['clinic', 'patient'])
        expect(readFileSync(join(project, `${voice}.pdf`), 'latin1').slice(0, 5)).toBe('%PDF-');
    }
  });
});
