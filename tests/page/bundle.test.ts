import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { buildPage } from '../../src/build/page.ts';
import { home } from '../support/story.ts';
import { ownTemplate } from '../support/webPage.ts';

const { html, script, worker } = await buildPage(home, JSON.stringify(await ownTemplate()), '2026-01-01');

test('no package and no room of the core stands in the script of the page', () => {
  const inputs = Object.keys(script.inputs);
  expect(inputs).toContain('src/page/main.ts');
  expect(inputs.filter((path) => !path.startsWith('src/page/') || path.startsWith('src/page/worker/'))).toEqual([]);
  // The worker holds them, and nothing of Node's.
  expect(Object.keys(worker.inputs).some((path) => path.includes('node_modules/pdfkit/'))).toBe(true);
  expect(Object.keys(worker.inputs).filter((path) => path.startsWith('node:'))).toEqual([]);
});

test('it is one file of 4 MB at most, and its own script can be read in one sitting', () => {
  expect(html.length).toBeLessThan(4_000_000);
  // As written, comments and types among it: under 4,000 lines, in files of which none is longer than 230. As it is run it is
  // less than half of that, and a fourteenth of it is the script of the papers' web pages, for their curves and lists. Whoever needs more than this takes something out.
  const written = Object.values(script.inputs).reduce((sum, one) => sum + one.bytes, 0);
  expect(written).toBeLessThan(152_000);
  const run = Object.values(script.outputs).reduce((sum, one) => sum + one.bytes, 0);
  expect(run).toBeLessThan(59_000);
});

test('the policy stands before anything that could run, lets one script and one style run, and names no address', () => {
  const [, policy] =
    /^<!doctype html>\n<html lang="en">\n<meta charset="utf-8">\n<meta http-equiv="content-security-policy" content="([^"]+)">/.exec(
      html,
    )!;
  const hash = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
  const [, run] = /<script>([\s\S]*?)<\/script>/.exec(html)!;
  const [, style] = /<style>([\s\S]*?)<\/style>/.exec(html)!;
  expect(policy).toContain(`script-src ${hash(run!)};`);
  expect(policy).toContain(`style-src ${hash(style!)};`);
  expect(policy).toContain("default-src 'none'; ");
  expect(policy).toContain("connect-src 'none'");
  expect(policy).not.toMatch(/unsafe|https?:|\*/);
  expect(html.match(/<script>/g)).toHaveLength(1);
});
