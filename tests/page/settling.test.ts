import { expect, test } from 'vitest';
import { LANGUAGES, placeOf, type Words } from '../../src/language/index.ts';
import type { Wish } from '../../src/page/messages.ts';
import { emptyShelf, put } from '../../src/page/worker/files.ts';
import { readPerson } from '../../src/page/worker/reading.ts';
import { tellerOf } from '../../src/page/worker/said.ts';
import { look, type Voice } from '../../src/page/worker/who.ts';
import { teller } from '../../src/papers/teller.ts';
import { wordsOf } from '../support/story.ts';

const quiet = (): string => '';
const voice: Voice = { wrong: quiet, toldBy: quiet, refused: quiet, heavy: quiet, earlier: quiet };
const english = wordsOf() as Words;
const spoken: Parameters<typeof readPerson>[2] = {
  place: placeOf('en', undefined)!,
  own: english,
  tell: tellerOf(english, english),
  forms: LANGUAGES.map((one) => teller(wordsOf(one) as Words)),
};

/** Readings every half hour of so many days, in numbers of mg/dL, under a name that tells no unit. */
function days(count: number): string {
  const two = (n: number): string => String(n).padStart(2, '0');
  const rows = Array.from({ length: count * 48 }, (_, i) => {
    const day = `2026-03-${two(1 + Math.floor(i / 48))}`;
    return `${day} ${two(Math.floor((i % 48) / 2))}:${two(30 * (i % 2))},${150 + Math.round(60 * Math.sin(i / 9))}`;
  });
  return ['Time,Sensor glucose', ...rows, ''].join('\n');
}

/** What comes of files of one person, with what was asked for on the page. */
async function readWith(files: Record<string, string>, asked: Wish['asked'], layout?: Wish['layout']) {
  const shelf = emptyShelf();
  put(
    shelf,
    Object.entries(files).map(([name, text]) => ({ path: `anna/${name}`, bytes: new TextEncoder().encode(text) })),
  );
  const { together } = look(shelf, [], '2026-04-01', voice).found;
  const wish: Wish = {
    ...{ person: together, ofMany: false, since: false, asked, language: 'en', today: '2026-04-01' },
    ...(layout === undefined ? {} : { layout }),
  };
  return readPerson(shelf, wish, spoken);
}

const LYING = {
  compare: 'previous',
  changed: '2026-03-20 new job',
  code: 'HL-9',
  name: 'Anna',
  days: 7,
  unit: 'mg/dL',
} as const;

test.each(['compare', 'changed', 'code', 'name', 'days'] as const)(
  'settings beside the files say %s until it is set aside on the page, and nothing else goes with it',
  async (name) => {
    const { compare: _c, ...marked } = LYING;
    const { changed: _m, ...compared } = LYING;
    const given = name === 'changed' ? marked : compared;
    const files = { 'a.csv': days(28), 'settings.json': JSON.stringify(given) };
    const lying = await readWith(files, {});
    expect(lying.read.holds).toMatchObject(given);
    const { read, current } = await readWith(files, { [name]: undefined });
    expect(read.ok).toBe(true);
    const { [name]: gone, ...rest } = given as Record<string, unknown>;
    expect(gone).toBeDefined();
    expect(read.holds).toMatchObject(rest);
    expect(read.holds[name]).toBe(undefined);
    if (name === 'compare' || name === 'changed') {
      expect(lying.current!.analysis.settings.compare).toBeDefined();
      expect(current!.analysis.settings.compare).toBe(undefined);
    }
  },
);

test.each([
  ['settings', 'unit', { unit: 'mmol/L' }, undefined],
  ['a layout', 'layout', {}, { unit: 'mmol/L' }],
] as const)(
  'a unit said by %s that no number can have is told, and asked for again with both readings',
  async (_, of, asked, layout) => {
    const { read } = await readWith({ 'a.csv': days(14) }, asked, layout);
    expect(read.ok).toBe(false);
    expect(read.asked).toMatchObject([
      {
        of,
        text: expect.stringContaining('You said mmol/L, which does not fit the numbers in a.csv'),
        readings: [
          { value: 'mg/dL', shows: [expect.stringContaining('90 mg/dL = 5.0 mmol/L')] },
          { value: 'mmol/L', shows: [expect.stringContaining('90 mmol/L')] },
        ],
      },
    ]);
    expect(read.asked[0]!.rows[1]).toContain('2026-03-01 00:00');
    const mended = await readWith(
      { 'a.csv': days(14) },
      ...((of === 'unit' ? [{ unit: 'mg/dL' }] : [{}, { unit: 'mg/dL' }]) as [Wish['asked'], Wish['layout']?]),
    );
    expect(mended.read).toMatchObject({ ok: true, asked: [] });
  },
);
