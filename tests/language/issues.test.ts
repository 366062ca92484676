import { readFileSync } from 'node:fs';
import { expect, expectTypeOf, it } from 'vitest';
import { catalogues, issueCodes } from '../../src/build/catalogues.ts';
import type { Detail } from '../../src/model/detail.ts';
import type { IssueCode } from '../../src/model/issues.ts';
import type { WordParams } from '../../src/model/wordParams.ts';
import type { Below, WordKey } from '../../src/model/words.ts';

const codes = issueCodes(readFileSync(new URL('../../src/model/issues.ts', import.meta.url), 'utf8'));

/** Forms of data without words, or with words that ask for what the form does not have. */
type Lacking<T = Detail> = T extends Detail
  ? `understood.${T['is']}` extends WordKey
    ? [WordParams[`understood.${T['is']}`]] extends [Exclude<keyof T, 'is'>]
      ? never
      : T['is']
    : T['is']
  : never;

it('has words for every issue and every form of data there is, and no others', () => {
  expectTypeOf<Lacking>().toBeNever();
  expectTypeOf<IssueCode>().toEqualTypeOf<Below<'issues'>>();
  expect(codes.length).toBeGreaterThan(100);
});

it('names in the catalogue at least one file that says it', () => {
  const rows = catalogues()
    ['docs/issues.md']!.split('\n')
    .filter((line) => line.startsWith('| `'));
  expect(rows.length).toBe(codes.length);
  expect(rows.filter((row) => !/\.ts` \|$/.test(row))).toEqual([]);
});
