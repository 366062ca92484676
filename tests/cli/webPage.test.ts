import { spawnSync } from 'node:child_process';
import { appendFileSync, cpSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { home, listed, run, scratch } from './run.ts';

const story = join(home, 'sample-data/steady-fortnight');
const PAGES = ['HL-104-clinic-report.html', 'HL-104-patient-paper.html'];

/** The built command with templates of its own, as a clinic has it that changed them. */
function clinicCopy(): { folder: string; report(): ReturnType<typeof run> } {
  const folder = scratch();
  for (const part of ['dist', 'templates']) cpSync(join(home, part), join(folder, part), { recursive: true });
  writeFileSync(join(folder, 'package.json'), '{"type":"module"}');
  symlinkSync(join(home, 'node_modules'), join(folder, 'node_modules'));
  return {
    folder,
    report() {
      const args = [join(folder, 'dist/daybands.js'), 'report', story, '--html', '--out', 'results'];
      const ran = spawnSync(process.execPath, args, { cwd: folder, encoding: 'utf8', timeout: 60_000 });
      return { exit: ran.status, out: ran.stdout, err: ran.stderr };
    },
  };
}

test('--html also writes both papers as web pages, and says so', () => {
  const folder = scratch();
  const { exit, out, err } = run(folder, ['report', story, '--html', '--out', 'results']);
  expect([exit, err]).toEqual([0, '']);
  expect(listed(join(folder, 'results')).filter((name) => name.endsWith('.html'))).toEqual(PAGES);
  for (const name of PAGES) {
    expect(out).toContain(name);
    expect(readFileSync(join(folder, 'results', name), 'utf8')).toMatch(
      /^<!doctype html>\n<html lang="en"[\s\S]*<\/html>\n$/,
    );
  }
});

test('without --html there are none', () => {
  const folder = scratch();
  run(folder, ['report', story, '--out', 'results']);
  expect(listed(join(folder, 'results')).filter((name) => name.endsWith('.html'))).toEqual([]);
});

test('the same input gives the same page', () => {
  const folder = scratch();
  for (const out of ['a', 'b']) run(folder, ['report', story, '--html', '--out', out]);
  for (const name of PAGES) {
    expect(readFileSync(join(folder, 'b', name), 'utf8')).toBe(readFileSync(join(folder, 'a', name), 'utf8'));
  }
});

test('a page cannot be locked, so nothing is written that only looks so', () => {
  const folder = scratch();
  const { exit, err } = run(folder, ['report', story, '--html', '--password', 'x', '--out', 'results']);
  expect(exit).toBe(64);
  expect(err).toContain('--password');
  expect(listed(join(folder, 'results'))).toEqual([]);
});

test('a clinic may change the template', () => {
  const { folder, report } = clinicCopy();
  appendFileSync(join(folder, 'templates/page.css'), '\n.ours { color: #1a1a1a; }\n');
  const page = join(folder, 'templates/page.html');
  writeFileSync(page, readFileSync(page, 'utf8').replace('<footer>', '<footer class="ours"><p>Ask at desk 2.</p>'));
  expect(report()).toMatchObject({ exit: 0, err: '' });
  const written = readFileSync(join(folder, 'results', PAGES[0]!), 'utf8');
  expect(written).toContain('.ours { color: #1a1a1a; }');
  expect(written).toContain('Ask at desk 2.');
});

test('a changed template with faults is refused with their lines, and nothing is written', () => {
  const { folder, report } = clinicCopy();
  const page = join(folder, 'templates/page.html');
  writeFileSync(page, readFileSync(page, 'utf8').replace('</body>', '<script>1</script><p>{{name}}</p></body>'));
  const { exit, err } = report();
  expect(exit).toBe(64);
  const line =
    readFileSync(page, 'utf8')
      .split('\n')
      .findIndex((text) => text.includes('<script>')) + 1;
  expect(err).toContain(`page.html:${line}: `);
  expect(err).toContain('"script"');
  expect(err).toContain('"name"');
  expect(listed(join(folder, 'results'))).toEqual([]);
});
