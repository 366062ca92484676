import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { parseShard } from '../../src/clinic/shards.ts';
import { needs } from '../support/tools.ts';
import { home, scratch } from './run.ts';

/** Whatever stands in fences on the page on many machines: it is copied as it is. */
const page = readFileSync(join(home, 'docs/scale.md'), 'utf8');
const fenced = (language: string): string[] =>
  [...page.matchAll(new RegExp(`^\`\`\`${language}\n(.*?)^\`\`\``, 'gms'))].map(([, text]) => text!);
const yaml = fenced('yaml')[0]!;
const array = fenced('sh').find((text) => text.includes('#SBATCH'))!;
const inYaml = /- \|\n((?: {14}.*\n)+)/.exec(yaml)![1]!.replace(/^ {14}/gm, '');

test.each([...fenced('sh').map((text) => [text]), [inYaml]])('a shell understands it: %s', (text) => {
  const checked = spawnSync('bash', ['-n'], { input: text, encoding: 'utf8' });
  expect([checked.status, checked.stderr]).toEqual([0, '']);
});

const yamlReader = spawnSync('python3', ['-c', 'import yaml']).status === 0;
needs('python3-yaml', yamlReader)('the job of a cluster is YAML, and divides into as many parts as it asks for', () => {
  const completions = Number(/completions: (\d+)/.exec(yaml)![1]);
  expect(inYaml).toContain(`/${completions}"`);
  const code = 'import json, sys, yaml; print(json.dumps(yaml.safe_load(sys.stdin)))';
  const parsed = spawnSync('python3', ['-c', code], { input: yaml, encoding: 'utf8' });
  expect(parsed.stderr).toBe('');
  const job = JSON.parse(parsed.stdout);
  expect(job).toMatchObject({ apiVersion: 'batch/v1', kind: 'Job' });
  // What batch/v1 asks for beside these, by the Kubernetes documentation of Jobs (from memory).
  expect(job.spec).toMatchObject({ completionMode: 'Indexed', completions, backoffLimitPerIndex: 2 });
  expect(job.spec.template.spec.restartPolicy).toBe('Never');
  const [container] = job.spec.template.spec.containers;
  expect(container.args).toEqual([inYaml]);
  const volumes = job.spec.template.spec.volumes.map(({ name }: { name: string }) => name);
  for (const { name } of container.volumeMounts) expect(volumes).toContain(name);
});

/** Runs a fragment with a command in place of ours that keeps its arguments and ends with `exit`. */
function ran(text: string, env: Record<string, string>, exit = 0): { args: string[]; exit: number | null } {
  const folder = scratch();
  mkdirSync(join(folder, 'bin'));
  const stub = join(folder, 'bin/daybands');
  writeFileSync(stub, `#!/bin/sh\nprintf '%s\\n' "$@" > '${folder}/args'\nexit ${exit}\n`);
  chmodSync(stub, 0o755);
  const shell = spawnSync('sh', ['-c', text], { env: { ...env, PATH: `${join(folder, 'bin')}:${process.env.PATH}` } });
  return { args: readFileSync(join(folder, 'args'), 'utf8').trim().split('\n'), exit: shell.status };
}

test.each<[string, string, (i: number, of: number) => Record<string, string>]>([
  [
    'an array of jobs',
    array,
    (i, of) => ({ SLURM_ARRAY_TASK_ID: `${i + 1}`, SLURM_ARRAY_TASK_COUNT: `${of}`, SLURM_CPUS_PER_TASK: '2' }),
  ],
  ['an indexed job', inYaml, (i) => ({ JOB_COMPLETION_INDEX: `${i}` })],
])('%s: each index is another part, all parts are the whole', (_, text, env) => {
  const of = 8;
  const parts = Array.from({ length: of }, (_, i) => {
    const { args, exit } = ran(text, env(i, of));
    expect(exit).toBe(0);
    expect(args.slice(0, 4)).toEqual(['clinic', '/data/tomorrow', '--out', '/data/tomorrow-papers']);
    expect(args[args.indexOf('--threads') + 1]).toBe('2');
    return parseShard(args[args.indexOf('--shard') + 1]!);
  });
  expect(parts).toEqual(Array.from({ length: of }, (_, i) => ({ index: i + 1, of })));
});

test.each([array, inYaml])(
  'some who could not be read are no reason to try again; what cannot be meant is told',
  (text) => {
    const env = {
      SLURM_ARRAY_TASK_ID: '1',
      SLURM_ARRAY_TASK_COUNT: '8',
      SLURM_CPUS_PER_TASK: '2',
      JOB_COMPLETION_INDEX: '0',
    };
    expect([0, 1, 2, 64, 137].map((exit) => ran(text, env, exit).exit)).toEqual([0, 0, 0, 64, 137]);
  },
);
