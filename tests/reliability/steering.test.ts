import fs, { mkdirSync, writeFileSync } from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ask } from '../../src/cli/clinic/asked.ts';
import type { Door } from '../../src/cli/door.ts';
import { EXIT, WrongUse } from '../../src/cli/exits.ts';
import { read } from '../../src/cli/read.ts';
import { report } from '../../src/cli/report.ts';
import { wrongUse } from '../../src/cli/tell.ts';
import { teller } from '../../src/papers/teller.ts';
import { clinic, filesIn } from '../cli/clinicRun.ts';
import { listed, plainExport, scratch } from '../cli/run.ts';
import { words } from '../support/webPage.ts';
import { expectInertFile, expectPlainLines } from './inert.ts';
import { HOSTILE } from './strings.ts';

/** Files of `templates/` as a clinic may have changed them: whoever reads one is given this. */
const changed = new Map<string, string>();
const { readFileSync } = fs;
beforeAll(() => {
  fs.readFileSync = ((path: fs.PathOrFileDescriptor, ...rest: []) => {
    const [own] = /templates\/\w+\.json$/.exec(String(path)) ?? [];
    return changed.has(own ?? '') ? Buffer.from(changed.get(own!)!) : readFileSync(path, ...rest);
  }) as typeof readFileSync;
  syncBuiltinESMExports();
});
afterAll(() => {
  fs.readFileSync = readFileSync;
  syncBuiltinESMExports();
});

const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
const tell = teller(words);

function door(): Door & { out: string[]; err: string[] } {
  const [out, err]: [string[], string[]] = [[], []];
  const lines = { out, err, print: (line: string) => out.push(line), complain: (line: string) => err.push(line) };
  return { tell, words, today: '2026-04-01', day: () => '2026-04-01', time: () => '08:00', version: 'x', ...lines };
}

/** Runs a command as `main` does: a wrong use is told, not thrown. */
async function ended(at: ReturnType<typeof door>, run: () => Promise<number>): Promise<number> {
  try {
    return await run();
  } catch (error) {
    if (!(error instanceof WrongUse)) throw error;
    at.complain(wrongUse(tell, error));
    return EXIT.usage;
  }
}

const logWords = (text: string) => ({
  about: text,
  amounts: [text],
  joins: [text],
  plurals: [[text, text]],
  foods: { bread: [text], [text]: ['toast', text] },
  meals: { midday: [text] },
  treatsLow: [text],
  longActing: [text],
  effort: { light: [text], hard: [text, 'run'] },
});

/** Layout, settings, words of logbooks and medicines that hold a text wherever any text may stand. */
function everywhere(text: string): Record<string, string> {
  const settings = {
    name: text.slice(0, 80) || 'x',
    code: text.slice(0, 80) || 'x',
    clinic: text.slice(0, 80) || 'x',
    changed: `2026-03-10 ${text}`.slice(0, 100),
    layout: 'layout.json',
    html: undefined,
  };
  const columns = {
    Time: 'time',
    'Sensor glucose': { role: 'sensor', unit: 'mg/dL', label: text.slice(0, 80) },
    [text]: { role: 'note', label: text.slice(0, 80), unit: text.slice(0, 20) },
    Food: 'food',
    Carbs: { role: 'carbohydrate', unit: 'g', label: text.slice(0, 80) },
    Insulin: { role: 'insulin', unit: text.slice(0, 20), label: text.slice(0, 80) },
  };
  const at = (minutes: number): string =>
    new Date(Date.UTC(2026, 2, 2) + minutes * 60_000).toISOString().slice(0, 16).replace('T', ' ');
  const rows = Array.from({ length: 16 * 96 }, (_, i) =>
    i % 32 === 0
      ? `${at(i * 15)},${100 + (i % 50)},${quoted(text)},${i % 64 === 0 ? 'toast' : quoted(text)},30,4`
      : `${at(i * 15)},${100 + (i % 50)},,,,`,
  );
  return {
    'a.csv': [`Time,Sensor glucose,${quoted(text)},Food,Carbs,Insulin`, ...rows, `x,${quoted(text)},,,,`].join('\n'),
    'layout.json': JSON.stringify({ unit: 'mg/dL', columns }),
    'settings.json': JSON.stringify(settings),
  };
}

describe('files that steer, with a text wherever one may stand', () => {
  test.each(HOSTILE)('%s', async (_, text) => {
    const folder = scratch(everywhere(text));
    changed.set('templates/foods.json', JSON.stringify(logWords(text)));
    changed.set(
      'templates/medicines.json',
      JSON.stringify({ medicines: [{ id: text, words: [text.toLowerCase()], source: text }] }),
    );
    const at = door();
    const out = join(folder, 'papers');
    const wanted = { out, html: /[<>"&]/.test(text), snapshot: true };
    const exit = await ended(at, () => report([join(folder, 'a.csv')], wanted, at));
    const output = await ended(at, () => read([join(folder, 'a.csv')], {}, at));
    await ended(at, () => read([join(folder, 'a.csv')], { json: true }, at));
    changed.clear();
    expectPlainLines([...at.out, ...at.err].join('\n'));
    expect(exit === EXIT.partly ? at.err : []).toEqual([]);
    expect(listed(folder)).toEqual(['a.csv', 'layout.json', ...(exit === 0 ? ['papers'] : []), 'settings.json']);
    for (const [name, bytes] of filesIn(out)) {
      expect(name).toMatch(/^[\p{L}\p{N}][\p{L}\p{M}\p{N}.-]*$/u);
      expectInertFile(name, bytes);
    }
    // What is no text at all (blanks only) is refused with a reason; everything else is read.
    if (exit !== EXIT.done) expect([exit, at.err.join('').length > 20], text).toEqual([EXIT.usage, true]);
    expect(output).toBe(exit);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});

describe('files that steer, with a text where none may stand: refused, in one plain line a mistake', () => {
  const settings: [string, (text: string) => unknown][] = [
    'unit zone dateOrder targets days from to paper grey language region layout compare changed a1c date'
      .split(' ')
      .map((name): [string, (text: string) => unknown] => [`settings: ${name}`, (text) => ({ [name]: text })]),
    [
      ['settings: a name', (text: string) => ({ [text]: text })],
      ['settings: a list', (text: string) => [text]],
    ] as [string, (text: string) => unknown][],
  ].flat();
  const layouts: [string, (text: string) => unknown][] = [
    'encoding delimiter headerLine firstLine decimalMark unit dateOrder clock serialDates columns tables timezone'
      .split(' ')
      .map((name): [string, (text: string) => unknown] => [`layout: ${name}`, (text) => ({ [name]: text })]),
    [
      ['layout: a name', (text: string) => ({ [text]: text })],
      ['layout: a meaning', (text: string) => ({ columns: { [text]: text } })],
      ['layout: a name in a column', (text: string) => ({ columns: { [text]: { role: 'note', [text]: text } } })],
      ['layout: a list', (text: string) => ({ tables: [{ [text]: [text] }] })],
    ] as [string, (text: string) => unknown][],
  ].flat();
  const thresholds: [string, (text: string) => unknown][] = [
    ['thresholds: a name', (text) => ({ [text]: text })],
    ['thresholds: a group', (text) => ({ veryLow: text })],
    ['thresholds: a name in a group', (text) => ({ lows: { [text]: 1 } })],
    ['thresholds: a share', (text) => ({ lows: { share: text } })],
  ];
  const templates: [string, (text: string) => unknown][] = [
    ['foods: a name', (text) => ({ ...logWords('x'), [text]: [text] })],
    ['foods: a list', (text) => ({ ...logWords('x'), amounts: text })],
    ['foods: a meal', (text) => ({ ...logWords('x'), meals: { [text]: [text] } })],
    ['medicines: no words', (text) => ({ medicines: [{ id: text, words: [], source: text }] })],
    ['medicines: a name', (text) => ({ [text]: [] })],
    ['topics: a row', (text) => ({ rows: [{ topic: text, rule: text, [text]: text }] })],
    ['topics: a list', (text) => ({ rows: text })],
  ];
  const snapshots: [string, (text: string) => unknown][] = [
    ['snapshot: a version', (text) => ({ format: 'daybands-snapshot', version: text })],
    ['snapshot: a name', (text) => ({ format: 'daybands-snapshot', version: 1, [text]: text })],
  ];

  /** Runs one with a text in place, and hands over how it ended. */
  async function attempt(folder: string, what: string, json: string, at: ReturnType<typeof door>): Promise<number> {
    const [kind] = what.split(':');
    const out = join(folder, 'papers');
    const file = join(folder, 'steer.json');
    writeFileSync(file, json);
    const given = { out, from: '2027-01-01' };
    if (kind === 'settings') {
      writeFileSync(join(folder, 'settings.json'), json);
      return report([join(folder, 'a.csv')], { out }, at);
    }
    writeFileSync(join(folder, 'settings.json'), '{}');
    if (kind === 'layout') return report([join(folder, 'a.csv')], { ...given, layout: file }, at);
    if (kind === 'snapshot') return report([join(folder, 'a.csv')], { ...given, compare: file }, at);
    if (kind === 'thresholds') {
      const limits = { timeLimit: 1, memory: 100, queueWait: 1 };
      await ask(join(folder, 'people'), { out, thresholds: file, ...limits }, at);
      return EXIT.done;
    }
    changed.set(`templates/${kind}.json`, json);
    return report([join(folder, 'a.csv')], given, at);
  }

  const all = [...settings, ...layouts, ...thresholds, ...templates, ...snapshots];
  test.each(all)('%s', async (what, content) => {
    const folder = scratch({ 'a.csv': plainExport(2) });
    mkdirSync(join(folder, 'people/a'), { recursive: true });
    writeFileSync(join(folder, 'people/a/a.csv'), plainExport(1));
    for (const [of, text] of HOSTILE) {
      // Of itself: what is no JSON any more; and a text alone.
      for (const json of [JSON.stringify(content(text)), JSON.stringify(content(text)).slice(0, -1) + text]) {
        const at = door();
        const exit = await ended(at, () => attempt(folder, what, json, at));
        changed.clear();
        const where = `${what}: ${of}: ${json.slice(0, 80)}`;
        expectPlainLines([...at.out, ...at.err].join('\n'));
        expect(listed(join(folder, 'papers')), where).toEqual([]);
        expect([EXIT.refused, EXIT.usage], `${where}\n${at.err.join('\n')}`).toContain(exit);
        expect(at.err.join('\n').length, where).toBeGreaterThan(20);
        for (const line of at.err) expect(line.length, where).toBeLessThan(1500);
      }
    }
    expect(listed(folder).filter((name) => !['a.csv', 'people', 'steer.json', 'settings.json'].includes(name))).toEqual(
      [],
    );
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});

test('a clinic whose manifest, settings and layouts hold such texts: each refused alone, and told in every list', () => {
  const folder = scratch();
  const people = join(folder, 'people');
  const columns = ['targets', 'unit', 'zone', 'language', 'visit', 'a1c'];
  const rows = [`person,${columns.join(',')}`];
  const files: [string, (text: string) => unknown][] = [
    ['name', (text) => ({ [text]: text })],
    ['zone', (text) => ({ zone: text.slice(0, 80) })],
    ['region', (text) => ({ region: text.slice(0, 80) })],
    ['layout', (text) => ({ layout: text })],
    ['compare', (text) => ({ compare: text })],
    ['a1c', (text) => ({ a1c: text })],
  ];
  const person = (name: string, settings?: unknown): void => {
    mkdirSync(join(people, name), { recursive: true });
    writeFileSync(join(people, name, 'a.csv'), `${plainExport(1)}2026-03-09 00:00,${100 + rows.length}\n`);
    if (settings !== undefined) writeFileSync(join(people, name, 'settings.json'), JSON.stringify(settings));
  };
  HOSTILE.forEach(([, text], i) => {
    columns.forEach((column, at) => {
      person(`${i}-${column}`);
      rows.push([`${i}-${column}`, ...columns.map((_, j) => (j === at ? quoted(text) : ''))].join(','));
    });
    for (const [name, contentOf] of files) person(`${i}-own-${name}`, contentOf(text));
    person(`${i}-own-columns`, { layout: 'l.json' });
    writeFileSync(
      join(people, `${i}-own-columns`, 'l.json'),
      JSON.stringify({ columns: { [text]: { role: text } }, [text]: text }),
    );
  });
  writeFileSync(join(people, 'manifest.csv'), rows.join('\n'));
  const ran = clinic(folder, 'clinic', 'people', '--out', 'papers', '--threads', '1');
  expect([0, 1, 2], ran.err).toContain(ran.exit);
  expectPlainLines(ran.out + ran.err);
  expect(listed(folder)).toEqual(['papers', 'people']);
  const papers = filesIn(join(folder, 'papers'));
  for (const [name, bytes] of papers) {
    if (name.startsWith('worklist') || name === 'measures.csv') expectInertFile(name, bytes);
    expect(name).toMatch(/^[\p{L}\p{N}][\p{L}\p{M}\p{N}.-]*(\/[\p{L}\p{N}][\p{L}\p{M}\p{N}.-]*)?$/u);
  }
  const list = papers.get('worklist.csv')!.toString();
  // A cell of blanks is an empty cell; everything else is somebody who could not be read.
  expect(list.match(/cannot|could not|not /gi)!.length).toBeGreaterThan(HOSTILE.length * 10);
});
