import { cpSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readClinicSettings } from '../../src/schemas/clinicSettings.ts';
import { parseLayout } from '../../src/schemas/layout.ts';
import { readSettings } from '../../src/schemas/settings.ts';
import { parseThresholds } from '../../src/schemas/thresholds.ts';
import { clinic } from '../cli/clinicRun.ts';
import { home, run, scratch } from '../cli/run.ts';
import { writePeople } from '../support/people.ts';

const pages = ['README.md', 'DEVELOPERS.md', ...readdirSync(join(home, 'docs')).map((name) => `docs/${name}`)]
  .filter((path) => path.endsWith('.md'))
  .map((path) => ({ path, text: readFileSync(join(home, path), 'utf8') }));

interface Block {
  page: string;
  line: number;
  kind: string;
  text: string;
}

const blocks: Block[] = pages.flatMap(({ path, text }) =>
  [...text.matchAll(/^```(\w*)\n([\s\S]*?)^```/gm)].map((match) => ({
    page: path,
    line: text.slice(0, match.index).split('\n').length,
    kind: match[1]!,
    text: match[2]!,
  })),
);

/** Commands of one block, lines that end in a backslash joined and comments taken off. */
const commandsOf = (text: string): string[] =>
  text
    .replace(/\\\n\s*/g, ' ')
    .split('\n')
    .map((line) => line.replace(/\s+#.*$/, '').trim())
    .filter((line) => line !== '' && !line.startsWith('#'));

/** Commands that are run elsewhere, or cannot be here. Each with its reason. */
const ELSEWHERE: readonly (readonly [pattern: RegExp, why: string])[] = [
  [/^npm (ci|test|run)\b/, 'what this suite was built and started with; .ci/run gives each of them'],
  [/^(npx (tsx|stryker|vitest)|python3 tests)\b|^[A-Z_]+=\S+ npx/, 'tools for developers, minutes long'],
  [/\bqueue\b|^daybands worker/, 'needs a Redis server: tests/cli/clinicQueue.test.ts'],
  [/\bsbatch\b|^(kubectl|docker)\b/, 'needs a cluster'],
  [/^(code=|if )/, 'lines of a shell script around ours'],
  [/^npm (install|pack)\b|^FUZZ_SECONDS/, 'tests/reliability/package.test.ts; FUZZ_SECONDS takes minutes'],
];

const sh = blocks.filter(({ kind }) => kind === 'sh');

/** What a batch system puts in. */
const filledIn = (word: string): string =>
  word
    .replace('$SLURM_CPUS_PER_TASK', '2')
    .replace('$SLURM_ARRAY_TASK_ID', '1')
    .replace('$SLURM_ARRAY_TASK_COUNT', '8')
    .replace(/^\/data\b/, 'data');

/** The stubborn file of docs/formats.md and its layout. */
function diary(folder: string): void {
  const logbook = blocks.find(({ text }) => text.startsWith('Trial logbook'))!;
  writeFileSync(join(folder, 'diary.txt'), logbook.text);
  const layout = blocks.find(({ kind, text }) => kind === 'json' && text.includes('"KG"'))!;
  writeFileSync(join(folder, 'diary.json'), layout.text);
}

/** A folder as the pages speak of: exports of one person, of a clinic, and what an earlier visit left. */
function folderOfThePages(): string {
  const folder = scratch();
  const story = join(home, 'sample-data/steady-fortnight');
  cpSync(join(story, 'readings.csv'), join(folder, 'sensor.csv'));
  cpSync(join(story, 'readings.csv'), join(folder, 'exports/p17/sensor.csv'));
  for (const where of ['tomorrow', 'data/tomorrow']) writePeople(join(folder, where), 3, { days: 3, step: 30 });
  clinic(folder, 'clinic', 'tomorrow', '--out', 'results');
  const logbook = readdirSync(story).find((name) => /log|notes|diary/i.test(name));
  cpSync(join(story, logbook ?? 'readings.csv'), join(folder, 'logbook.csv'));
  diary(folder);
  const visit = run(folder, ['report', 'exports/p17', '--snapshot', '--out', 'of-earlier', '--code', 'P-17']);
  expect(visit.err + visit.out).toContain('visit');
  return folder;
}

describe('every command in the pages is understood, and does what it says', () => {
  const found = sh.flatMap(({ page, line, text }) => commandsOf(text).map((command) => ({ page, line, command })));
  const ours = found.filter(({ command }) => !ELSEWHERE.some(([pattern]) => pattern.test(command)));

  test('there is none of an unknown kind', () => {
    const unknown = ours.filter(({ command }) => !/^(daybands|node dist\/daybands\.js) /.test(command));
    expect(unknown).toEqual([]);
    expect(ours.length).toBeGreaterThan(5);
  });

  // In their order: a folder that one command names, another has to have written.
  test('each runs', () => {
    const folder = folderOfThePages();
    for (const { page, line, command } of ours) {
      const args = (command.match(/"[^"]*"|\S+/g) ?? []).map((word) => word.replace(/^"(.*)"$/, '$1'));
      const said = args.slice(args[0] === 'node' ? 2 : 1).map(filledIn);
      const redirect = said.indexOf('>');
      const words = redirect < 0 ? said : said.slice(0, redirect);
      const at = `${page}:${line}: ${command}`;
      const snapshot = words.findIndex((word) => /visit-\d/.test(word));
      if (snapshot > 0) {
        words[snapshot] = join(
          'of-earlier',
          readdirSync(join(folder, 'of-earlier')).find((name) => /-visit-/.test(name))!,
        );
      }
      const { exit, out, err } = run(folder, words);
      if (redirect >= 0) writeFileSync(join(folder, said[redirect + 1]!), out);
      expect(err, at).not.toMatch(/unknown (option|command)/);
      expect([0, 2], `${at}\n${err}`).toContain(exit);
    }
  });
});

describe('what the pages show of files', () => {
  const json = blocks.filter(({ kind }) => kind === 'json');
  test.each(json.map((block) => [`${block.page}:${block.line}`, block] as const))(
    '%s is of a known form',
    (_, block) => {
      const content: unknown = JSON.parse(block.text);
      const forms = [
        'settings' in readSettings(block.text, basename(block.page)),
        'run' in readClinicSettings(block.text, basename(block.page)),
        parseLayout(content).ok,
        parseThresholds(content).ok,
      ];
      expect(forms).toContain(true);
    },
  );

  test('the layout written step by step gives the rows that the page shows', () => {
    const folder = scratch();
    diary(folder);
    const shown = blocks.find(({ kind, text }) => kind === 'text' && /^\d+ rows = /.test(text))!.text.trim();
    const { out } = run(folder, ['read', 'diary.txt', '--layout', 'diary.json']);
    expect(out).toContain(shown.split(' rows')[0]);
    for (const part of shown.match(/\d+ (readings|notes|repeats|set aside|not data)/g)!) expect(out).toContain(part);
  });

  test('every option in the pages exists', () => {
    const help = ['report', 'read', 'clinic', 'worklist', 'worker']
      .map((command) => run(home, [command, '--help']).out)
      .join();
    const options = pages
      .filter(({ path }) => !/DEVELOPERS|performance/.test(path))
      .flatMap(({ path, text }) =>
        [...text.matchAll(/`(--[a-z][\w-]*)/g)].map((match) => ({ path, option: match[1]! })),
      );
    const ofOthers = new Set(['--check', '--update', '--ignore-scripts', '--omit', '--password-file']);
    const unknown = options.filter(
      ({ option }) => !ofOthers.has(option) && !new RegExp(`${option}\\b(?!-)`).test(help),
    );
    expect(unknown).toEqual([]);
  });
});
