import { readdirSync, readFileSync } from 'node:fs';
import type { Command } from 'commander';
import { describe, expect, test } from 'vitest';
import { program } from '../../src/cli/program.ts';
import { teller } from '../../src/papers/teller.ts';
import { home } from './run.ts';

const nothing = () => Promise.resolve();
const words: unknown = JSON.parse(readFileSync(`${home}/templates/words/en.json`, 'utf8'));
const command = program('0', teller(words), {
  report: nothing,
  read: nothing,
  clinic: nothing,
  worklist: nothing,
  worker: nothing,
  agreed: nothing,
  page: nothing,
});

describe.each(command.commands.map((one): [string, Command] => [one.name(), one]))('%s', (_, one) => {
  test('has words for itself and for every option, each its own', () => {
    const texts = [one.description(), ...one.options.map(({ description }) => description)];
    for (const text of texts) expect(text).toMatch(/ /);
    expect(texts).toEqual([...new Set(texts)]);
  });
});

test('every option of a command is read by something besides the help', () => {
  const sources = ['cli', 'cli/clinic', 'papers'].flatMap((folder) =>
    readdirSync(`${home}/src/${folder}`)
      .filter((name) => name.endsWith('.ts') && name !== 'program.ts')
      .map((name) => readFileSync(`${home}/src/${folder}/${name}`, 'utf8')),
  );
  const names = new Set(sources.join('\n').match(/\w+/g));
  const all = command.commands.flatMap((one) => one.options.map((option) => option.attributeName()));
  expect(all.filter((name) => !names.has(name))).toEqual([]);
});

// A worklist is in the language of the command.
test('a worklist takes what is about printing it, and nothing else', () => {
  const options = command.commands.find((one) => one.name() === 'worklist')!.options;
  expect(options.map(({ long }) => long)).toEqual([
    '--paper',
    '--grey',
    '--clinic',
    '--out',
    '--thresholds',
    '--by-visit',
    '--places',
  ]);
});
