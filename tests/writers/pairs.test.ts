import { expect, test } from 'vitest';
import { openSheets, pageOf, write } from './paper.ts';

const items = Array.from({ length: 300 }, (_, i) => `remark${i} in a few words`);

async function listed(of: string[], pairs: boolean) {
  const { sheets } = await openSheets(
    await write(pageOf([{ kind: 'list', ordered: false, dense: true, pairs, items: of }])),
  );
  return sheets;
}

test('items in pairs take half the sheets, read one after the other, nothing left out', async () => {
  const [one, two] = [await listed(items, false), await listed(items, true)];
  expect(two.length).toBeLessThanOrEqual(Math.ceil(one.length / 2));
  const shown = two.flatMap(({ text }) => text.match(/remark\d+/g) ?? []);
  expect(shown).toEqual(items.map((_, i) => `remark${i}`));
});

test('an item that outgrows a sheet is cut over sheets and not lost beside another', async () => {
  const long = Array.from({ length: 1500 }, (_, i) => `word${i}`).join(' ');
  for (const of of [[long, 'short'], ['short', long], [long]]) {
    const text = (await listed(of, true)).map((sheet) => sheet.text).join(' ');
    expect(text.match(/word\d+/g)).toHaveLength(1500);
    expect(text.includes('short')).toBe(of.length === 2);
  }
});
