import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { intake } from '../../src/analyse.ts';
import { ROLES } from '../../src/schemas/layout.ts';
import { TODAY, tell } from './digest.ts';

// The guide's worked example is run as it stands there, so that it cannot grow old.
const guide = readFileSync(new URL('../../docs/formats.md', import.meta.url), 'utf8');
const blocks = [...guide.matchAll(/```(\w+)\n([\s\S]*?)```/g)].map(([, kind, text]) => ({ kind, text: text! }));
const [diary, layout, account] = [blocks[0]!.text, JSON.parse(blocks[1]!.text), blocks[2]!.text];

it('the stubborn file of the guide is not read without its layout', () => {
  const digest = tell(diary);
  expect(digest.readings).toEqual([]);
  expect(digest.file.issues.some(({ level }) => level === 'refusal')).toBe(true);
});

it('the stubborn file of the guide is read with its layout as the guide says', () => {
  const digest = tell(diary, { layout });
  expect(digest.readings).toEqual([
    '2026-01-14 08:00 5.6 mmol/L',
    '2026-01-14 08:05 5.8 mmol/L',
    '2026-01-14 08:10 6.1 mmol/L',
    '2026-01-14 08:20 <? mmol/L',
  ]);
  expect(digest.notes).toEqual(['2026-01-14 08:05 meal 24 g [porridge]', '2026-01-14 08:10 insulin 4 IU [mealtime]']);
  const { ledger } = intake([{ name: 'diary.txt', bytes: new TextEncoder().encode(diary) }], {
    layout,
    today: TODAY,
    targets: 'adult',
    person: {},
  });
  const { rows, used, notes, duplicate, setAside, ignored } = ledger;
  expect(account.trim()).toBe(
    `${rows} rows = ${used} readings + ${notes} notes + ${duplicate} repeats + ${setAside} set aside + ${ignored} not data`,
  );
});

it('the guide names every meaning a column can have', () => {
  const named = /A column means one of: ([\s\S]*?)\. Columns/.exec(guide)![1]!.split(/,\s+/);
  expect(named.sort()).toEqual([...ROLES].sort());
});
