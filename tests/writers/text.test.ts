import { expect, test } from 'vitest';
import type { Report } from '../../src/model/report.ts';
import { pageAsText } from '../../src/writers/text.ts';
import { sampleReport } from './sample.ts';

test('a text holds no control and no sign that turns the direction of writing', () => {
  const paragraph = {
    kind: 'paragraph',
    style: 'body',
    text: 'a\u202eb\u0007 c\u2066d\u2069\u200b\u00a0e\u2028f',
  } as const;
  const given: Report = sampleReport({ pages: [{ id: 'draft', title: '', blocks: [paragraph] }] });
  const text = pageAsText({ ...given, header: { ...given.header, left: 'Ann\u202e\u001b[2J\nBe\u00ad' } }, 'draft');
  expect(text).not.toMatch(/[^\n\P{Cc}]|[\p{Cf}\p{Zl}\p{Zp}]/u);
  expect(text).toContain('ab cd e f');
  expect(text.split('\n')[0]).toBe('Ann[2J Be');
});
