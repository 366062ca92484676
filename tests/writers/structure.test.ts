import { beforeAll, describe, expect, test } from 'vitest';
import type { Report } from '../../src/model/report.ts';
import { structureFaults } from '../support/pdfStructure.ts';
import { needs } from '../support/tools.ts';
import { FONTS, pageOf, write } from './paper.ts';
import { sampleReport } from './sample.ts';

/** Breaks that leave the length of the file as it is, so that its table of objects still holds. */
const BREAKS: readonly [what: string, find: RegExp, put: (found: string) => string, fault: RegExp][] = [
  ['a head cell loses its scope', /\/Scope \/Column/, () => '/Scope /Colunm', /without a scope/],
  ['a figure loses its description', /\/Alt \(/, () => '/Alx (', /without a description/],
  ['a figure loses its box', /\/BBox \[/, () => '/BBxx [', /without its box/],
  ['a heading skips a level', /\/S \/H2\n/, () => '/S /H4\n', /skips to level 4/],
  ['a second top heading', /\/S \/H2\n/, () => '/S /H1\n', /headings 1 1/],
  ['a cell across all columns loses its span', /\/ColSpan 5/, () => '/ColSpax 5', /rows differ in length/],
  ['an unknown role', /\/S \/LBody\n/, () => '/S /LBodi\n', /unknown role/],
  ['the language is gone', /\/Lang \(/, () => '/Lanx (', /no language/],
  ['the claim is gone', /<pdfuaid:part>1</, () => '<pdfuaid:part>2<', /no claim/],
  ['the title is hidden', /\/DisplayDocTitle true/, () => '/DisplayDocTitlx true', /title is not shown/],
  [
    'a mark has another owner',
    /\/Nums \[\s*0 \[(\d+) 0 R (\d+) 0 R/,
    (it) => it.replace(/(\d+)( 0 R )(\d+)( 0 R)$/, '$3$2$1$4'),
    /has no owner/,
  ],
  ['a list loses its numbering', /\/ListNumbering \/Disc/, () => '/ListNumbering /Disx', /without its numbering/],
  [
    'a row loses its name',
    /\/S \/TH\n(?=\/P \d+ 0 R\n\/A <<\n\/O \/Table\n\/Scope \/Row)/,
    () => '/S /TD\n',
    /nothing names/,
  ],
  ['the claim of an archive is gone', /<pdfaid:part>3</, () => '<pdfaid:part>1<', /6\.6\.4/],
  ['a schema is not described', /<pdfaSchema:prefix>pdfuaid</, () => '<pdfaSchema:prefix>pdfuaix<', /6\.6\.2\.3/],
  ['the profile is gone', /\/DestOutputProfile /, () => '/DestOutputProfilx ', /6\.2\.3/],
  ['the dates differ', /<xmp:ModifyDate>2/, () => '<xmp:ModifyDate>1', /6\.6\.3/],
  ['a font is not embedded', /\/FontFile2 /, () => '/FontFilx2 ', /not embedded/],
  ['glyphs have no text', /\/ToUnicode /, () => '/ToUnicodx ', /no Unicode value/],
];

describe('the checker itself sees what is broken', () => {
  let whole: string;
  beforeAll(async () => {
    whole = Buffer.from(await write(sampleReport())).toString('latin1');
  });
  const broken = (find: RegExp, put: (found: string) => string): Uint8Array => {
    const found = find.exec(whole)?.[0];
    expect(found, `${find} stands in the file`).toBeDefined();
    return Buffer.from(whole.replace(find, put), 'latin1');
  };

  needs('qpdf')('a whole file has no fault', () => {
    expect(structureFaults(Buffer.from(whole, 'latin1')).faults).toEqual([]);
  });
  for (const [what, find, put, fault] of BREAKS)
    needs('qpdf')(what, () => {
      expect(structureFaults(broken(find, put)).faults.join('\n')).toMatch(fault);
    });
});

const empty: Report = pageOf([{ kind: 'heading', level: 1, text: 'Only a heading' }]);
needs('qpdf')('a page that ends with a heading is seen', async () => {
  expect(structureFaults(await write(empty)).faults).toEqual(['page 1 ends with a heading']);
});

test('the faces of this suite are those the product ships', () => {
  expect(FONTS.more?.('chinese', false)?.length).toBeGreaterThan(1e6);
});
