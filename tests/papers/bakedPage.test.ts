import { expect, test } from 'vitest';
import { fingerprint } from '../../src/bytes/hash.ts';
import { bytesOf } from '../../src/bytes/text.ts';
import { placeOf } from '../../src/language/index.ts';
import type { Baked } from '../../src/model/baked.ts';
import { revisedIn, withBaked } from '../../src/papers/bakedPage.ts';
import { ownWords } from '../../src/papers/own.ts';

const PAGE = [
  '<!doctype html>',
  `<script type="text/plain" data-of="as-built">${JSON.stringify({ 'words/en.json': fingerprint('{}'), 'foods.json': fingerprint('[]') })}</script>`,
  '<script>run()</script>',
  '</html>',
].join('\n');

test('what a clinic puts in stands before the script of the page, and nothing of it can end its element', () => {
  const baked: Baked = { settings: { clinic: '</script><script>alert(1)</script><!--' }, date: '2026-03-02' };
  const html = withBaked(PAGE, baked);
  const [, text] = /<script type="text\/plain" data-of="clinic">([^<]*)<\/script>\n<script>run\(\)<\/script>/.exec(
    html,
  )!;
  expect(JSON.parse(text!)).toEqual(baked);
  expect(html.match(/<script/g)).toHaveLength(3);
});

test('files that a clinic has changed since the page was built are told by their hash', () => {
  const now: Record<string, string> = { 'words/en.json': '{"a":"b"}', 'foods.json': '[]' };
  expect(revisedIn(PAGE, (path) => bytesOf(now[path]!))).toEqual(['words/en.json']);
  expect(revisedIn('<p>', () => bytesOf(''))).toEqual([]);
});

test('the words that came along are used where nobody has changed them', async () => {
  expect((await ownWords(placeOf('en', undefined)!)).review).toBeDefined();
});
