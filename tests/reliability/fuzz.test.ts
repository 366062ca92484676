import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sayable } from '../../src/cli/clinic/sayable.ts';
import { contentOf, listSpeaker, worklistCsv, worklistReport } from '../../src/clinic/lists.ts';
import { readManifest } from '../../src/clinic/manifest.ts';
import { findPeople } from '../../src/clinic/people.ts';
import { asOutcome } from '../../src/clinic/recorded.ts';
import { measuresCsv } from '../../src/clinic/table.ts';
import { USUAL } from '../../src/clinic/thresholds.ts';
import { rank } from '../../src/clinic/worklist.ts';
import { safeName } from '../../src/papers/safeName.ts';
import { readInputs } from '../../src/readers/index.ts';
import { parseLayout } from '../../src/schemas/layout.ts';
import { checkLogWords } from '../../src/schemas/logWords.ts';
import { readVisit } from '../../src/schemas/readVisit.ts';
import { readSettings } from '../../src/schemas/settings.ts';
import { parseThresholds } from '../../src/schemas/thresholds.ts';
import { visitText } from '../../src/schemas/visitText.ts';
import { chance } from '../../src/stats/chance.ts';
import { buildTimeline } from '../../src/timeline/index.ts';
import { outcome } from '../clinic/outcomes.ts';
import { rowsAddUp } from '../samples/stories.ts';
import { simulated, WORLDS } from '../support/simulatedDays.ts';
import { visitLike } from '../support/visits.ts';
import { words } from '../support/webPage.ts';
import { HOSTILE } from './strings.ts';

/** `FUZZ_SECONDS=600 npx vitest …` tries that long in each test, from another start each time; usually a fixed few. */
const seconds = Number(process.env.FUZZ_SECONDS ?? 0);
const trying =
  seconds > 0 ? { numRuns: 1e9, interruptAfterTimeLimit: seconds * 1000, seed: Date.now() } : { numRuns: 400 };
const patience = (seconds + 120) * 1000;
const tell = (runs: { n: number }, what: string): void => {
  if (seconds > 0) console.log(`${what}: ${runs.n} inputs in ${seconds} s`);
};

const text = fc.oneof(fc.constantFrom(...HOSTILE.map(([, one]) => one)), fc.string({ unit: 'binary', maxLength: 30 }));
const value = fc.letrec((tie) => ({
  any: fc.oneof(
    { maxDepth: 4 },
    text,
    fc.double(),
    fc.maxSafeInteger(),
    fc.constantFrom(null, true, false, -0, 1e308),
    fc.array(tie('any'), { maxLength: 4 }),
    fc.dictionary(text, tie('any'), { maxKeys: 4, noNullPrototype: true }),
  ),
})).any;

type Step = [kind: 'put' | 'drop' | 'double', at: number, value: unknown, name: string];
const steps = fc.array(fc.tuple(fc.constantFrom<Step[0]>('put', 'put', 'drop', 'double'), fc.nat(1000), value, text), {
  minLength: 1,
  maxLength: 3,
});

/** A sound document damaged in a few places: what a random text hardly ever becomes. */
function damaged(sound: unknown, changes: readonly Step[]): unknown {
  const copy = structuredClone(sound);
  for (const [kind, at, put, name] of changes) {
    const places: [object, string][] = [];
    const walk = (node: unknown): void => {
      if (typeof node !== 'object' || node === null) return;
      for (const key of Object.keys(node)) {
        places.push([node, key]);
        walk((node as Record<string, unknown>)[key]);
      }
    };
    walk(copy);
    const place = places[at % Math.max(1, places.length)];
    if (!place) continue;
    const [node, key] = place as [Record<string, unknown>, string];
    if (kind === 'put') node[key] = put;
    else if (kind === 'drop') delete node[key];
    else Object.defineProperty(node, name, { value: node[key], enumerable: true, configurable: true, writable: true });
  }
  return copy;
}

/** Sound documents damaged; anything at all; broken text. */
const texts = (...sound: unknown[]): fc.Arbitrary<string> =>
  fc.oneof(
    { weight: 6, arbitrary: fc.tuple(fc.constantFrom(...sound), steps).map((one) => JSON.stringify(damaged(...one))) },
    { weight: 2, arbitrary: value.map((one) => JSON.stringify(one) ?? '') },
    {
      weight: 1,
      arbitrary: fc
        .tuple(fc.constantFrom(...sound), fc.nat(2000), text)
        .map(([one, at, with_]) => JSON.stringify(one).slice(0, at) + with_),
    },
  );

const unpolluted = (): void => {
  expect(Object.keys(Object.prototype)).toEqual([]);
  expect(({} as Record<string, unknown>).polluted).toBeUndefined();
};
const parsed = (json: string): { ok: boolean; value?: unknown } => {
  try {
    return { ok: true, value: JSON.parse(json) };
  } catch {
    return { ok: false };
  }
};

function attack(what: string, inputs: fc.Arbitrary<string>, check: (json: string) => void): void {
  test(what, { timeout: patience }, () => {
    const runs = { n: 0 };
    fc.assert(
      fc.property(inputs, (json) => {
        runs.n++;
        check(json);
        unpolluted();
      }),
      trying,
    );
    tell(runs, what);
  });
}

const settings = {
  unit: 'mmol/L',
  zone: 'Europe/Oslo',
  targets: 'older',
  days: 14,
  from: '2026-02-02',
  paper: 'letter',
  grey: true,
  language: 'es',
  name: 'N',
  code: 'C',
  layout: 'l.json',
  compare: 'previous',
  changed: '2026-02-02 something',
  a1c: '7.1',
};
const layout = {
  encoding: 'utf-8',
  delimiter: ';',
  headerLine: 1,
  decimalMark: ',',
  unit: 'mmol/L',
  dateOrder: 'day-first',
  columns: { When: 'time', KG: 'sensor', W1: { role: 'carbohydrate', unit: 'g' }, '#4': 'note' },
  tables: [{ headerLine: 1 }, { firstLine: 9, columns: { a: 'time' } }],
};
const thresholds = { veryLow: { events: 1, share: 'goals' }, lows: { share: 0.04 }, data: { days: 14, share: 0.7 } };
const visit = JSON.parse(visitText(visitLike(simulated(WORLDS[1]!, 14, 0, '2026-01-01', chance(1)))));
const logWords = {
  amounts: ['g'],
  joins: ['and'],
  treatsLow: ['juice'],
  longActing: ['slow'],
  foods: { bread: ['toast'] },
  meals: { morning: ['breakfast'] },
  effort: { light: ['walk'], hard: ['run'] },
  plurals: [['ies', 'y']],
};

describe('files that steer: read or refused with a reason, whatever is in them', () => {
  attack('settings', texts(settings), (json) => {
    const read = readSettings(json, 'settings.json');
    if ('issues' in read) {
      expect(read.issues.length).toBeGreaterThan(0);
      for (const { origin, actual } of read.issues) {
        expect(origin?.line).toBeGreaterThan(0);
        expect(`${actual ?? ''}`.length).toBeLessThanOrEqual(80);
      }
    } else
      expect(Object.keys(read.settings).every((name) => name in settings || /^[a-zA-Z0-9]+$/.test(name))).toBe(true);
  });

  const table = 'When;KG;W1;R\n14.01.2026 08:00;5,6;;\n14.01.2026 08:05;5,8;24;bread\n14.01.2026 08:10;6,1;;\n';
  attack('layout, and a table read with it', texts(layout), (json) => {
    const content = parsed(json);
    if (!content.ok) return;
    const read = parseLayout(content.value);
    if (!read.ok) expect(read.problems.length).toBeGreaterThan(0);
    const given = { today: '2026-07-01', layout: read.ok ? read.layout : content.value };
    const files = readInputs([{ name: 'a.csv', bytes: new TextEncoder().encode(table) }], given as never);
    expect(rowsAddUp(buildTimeline(files, {}).total)).toBe(true);
  });

  attack('thresholds', texts(thresholds), (json) => {
    const content = parsed(json);
    if (!content.ok) return;
    const read = parseThresholds(content.value);
    if (!read.ok) expect(read.problems.join('')).not.toBe('');
  });

  attack('visit', texts(visit), (json) => {
    const read = readVisit(json, 'v.json');
    if ('problem' in read) expect(read.problem).not.toBe('');
    else if ('visit' in read) for (const { minutes } of read.visit.sums.days) expect(minutes).toBeGreaterThanOrEqual(0);
  });

  attack('words of logbooks', texts(logWords), (json) => {
    const content = parsed(json);
    if (!content.ok) return;
    const read = checkLogWords(content.value);
    if ('problems' in read) expect(read.problems.length).toBeGreaterThan(0);
  });

  const speaker = listSpeaker(words);
  const refusal = outcome({
    facts: null,
    outputs: [],
    refusals: [
      {
        key: 'clinic.unread.cannotOpen',
        params: { file: { q: 'word', value: 'a' }, actual: { q: 'word', value: 'b' } },
      },
    ],
  });
  attack('record of a run, and the worklist made of it', texts(outcome(), refusal), (json) => {
    const content = parsed(json);
    const read = content.ok ? asOutcome(content.value, sayable) : null;
    if (!read) return;
    for (const name of [read.stem, ...read.outputs.map((output) => output.name)]) expect(name).not.toMatch(/[/\\]|^\./);
    const lines = rank([read], USUAL);
    const page = contentOf(lines, USUAL, [], false);
    worklistCsv(lines, speaker);
    measuresCsv(lines);
    worklistReport(page, speaker, { paper: 'a4', printed: '2026-03-01', version: 'x', clinic: undefined }, 'paper');
  });
});

describe('a manifest and names: everyone is somebody, no name leads out', () => {
  const cell = text.map((one) => `"${one.replaceAll('"', '""')}"`);
  const sound = ['person', 'code', 'name', 'targets', 'unit', 'zone', 'language', 'visit', 'a1c'];
  const table = fc
    .tuple(
      fc.oneof(
        {
          weight: 4,
          arbitrary: fc.shuffledSubarray(sound).map((names) => ['person', ...names.filter((n) => n !== 'person')]),
        },
        fc.array(cell, { maxLength: 4 }),
      ),
      fc.array(fc.array(fc.oneof(cell, fc.constantFrom('a', 'b.csv', 'adult', '2026-01-01')), { maxLength: 9 }), {
        maxLength: 6,
      }),
      fc.constantFrom(',', ';', '\t'),
    )
    .map(([head, rows, mark]) => [head, ...rows].map((row) => row.join(mark)).join('\n'));
  attack('manifest', fc.oneof({ weight: 5, arbitrary: table }, text), (content) => {
    const read = readManifest(new TextEncoder().encode(content));
    const rows = read.ok ? read.rows : [];
    const listing = {
      exports: ['a/x.csv', 'b.csv', 'b__2.csv'],
      settings: [],
      folders: ['a'],
      odd: [],
      closed: [],
      unknown: [],
    };
    const people = findPeople(listing, rows);
    expect(new Set(people.map(({ stem }) => stem.toLowerCase())).size).toBe(people.length);
    for (const { stem } of people) {
      expect(stem).toMatch(/^[\p{L}\p{N}][\p{L}\p{M}\p{N}-]*$/u);
      expect(Buffer.byteLength(stem)).toBeLessThanOrEqual(200);
    }
    const files = people.flatMap((person) => person.files).sort();
    expect(files).toEqual(['a/x.csv', 'b.csv', 'b__2.csv']);
  });

  test.each(HOSTILE)('safe name of %s', (_, one) => {
    expect(safeName(one)).toMatch(/^[\p{L}\p{N}][\p{L}\p{M}\p{N}-]*$/u);
  });
});

describe('huge: refused or read, without a word for every one of a million mistakes', () => {
  const many = (n: number, one: (i: number) => string): string => Array.from({ length: n }, (_, i) => one(i)).join(',');
  test('a hundred thousand unknown names in the settings', () => {
    const read = readSettings(`{${many(100_000, (i) => `"k${i}":0`)}}`, 's');
    expect('issues' in read && read.issues.length).toBeLessThanOrEqual(20);
  });
  test('nesting a hundred thousand deep', () => {
    const deep = `${'{"columns":'.repeat(100_000)}1${'}'.repeat(100_000)}`;
    expect(readSettings(deep, 's')).toHaveProperty('issues');
    expect(parseLayout(JSON.parse(deep)).ok).toBe(false);
    expect(readVisit(deep, 'v.json')).toHaveProperty('problem');
    expect(asOutcome(JSON.parse(deep), () => true)).toBeNull();
  });
  test('a manifest of a hundred thousand columns, or rows of one person', () => {
    const wide = readManifest(new TextEncoder().encode(`person,${many(100_000, (i) => `c${i}`)}\n`));
    expect(wide).toEqual({ ok: false, actual: 'c0' });
    const rows = `person\n${'nobody\n'.repeat(100_000)}`;
    const long = readManifest(new TextEncoder().encode(rows));
    const none = { exports: [], settings: [], folders: [], odd: [], closed: [], unknown: [] };
    expect(long.ok && findPeople(none, long.rows)).toHaveLength(100_000);
  });
  test('three hundred thousand days in a visit file, and as many columns in a layout', () => {
    expect(readVisit(JSON.stringify({ ...visit, days: Array(300_000).fill(0) }), 'v.json')).toHaveProperty('problem');
    expect(parseLayout({ tables: Array(20_000).fill(0) })).toMatchObject({ problems: { length: 20 } });
    expect(parseLayout({ tables: Array(300_000).fill(0) })).toEqual({ ok: false, problems: ['layout: {…}'] });
    expect(asOutcome({ refusals: Array(300_000).fill(0) }, () => true)).toBeNull();
  });
});
