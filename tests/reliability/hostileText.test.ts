import { describe, expect, test } from 'vitest';
import { type Analysis, analyse } from '../../src/analyse.ts';
import { issueLines } from '../../src/cli/tell.ts';
import { compose } from '../../src/compose.ts';
import { makePapers } from '../../src/papers/makePapers.ts';
import { setAsideCsv } from '../../src/papers/setAside.ts';
import { teller } from '../../src/papers/teller.ts';
import { openWorkbooks } from '../../src/readers/containers/workbook.ts';
import { ownTemplate, webPage, words } from '../support/webPage.ts';
import { text as cellText, number, stamp, workbookOf } from '../support/workbook.ts';
import { FONTS } from '../writers/paper.ts';
import { expectInertFile, expectInertPage, expectPlainLines } from './inert.ts';
import { HOSTILE } from './strings.ts';

const template = await ownTemplate();
const tell = teller(words);
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
/** XML cannot hold every character; what it cannot hold no workbook brings. */
const inXml = (text: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what XML 1.0 leaves out
  text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Cs}/gu, '').slice(0, 31) || 'x';

const minutes = (from: number, n: number): string[] =>
  Array.from({ length: n }, (_, i) => new Date(Date.UTC(2026, 2, 2) + (from + i * 15) * 60_000).toISOString());
const wall = (iso: string): string => iso.slice(0, 16).replace('T', ' ');

/** One person's files with `text` wherever a file can bring text: names of files, columns, sheets, fields; cells; notes. */
function filesWith(text: string) {
  const readings = [
    `Time,Sensor glucose (mg/dL),${quoted(text)}`,
    ...minutes(0, 120).map((at, i) => `${wall(at)},${95 + ((i * 7) % 90)},${i % 40 === 0 ? quoted(text) : ''}`),
    // Rows that are set aside, so that the text is shown as what was found there.
    `2026-03-03 23:50,${quoted(text)},`,
    `${quoted(text)},100,`,
  ];
  const logbook = [
    'Time,Food,Carbohydrate (g),Insulin (IU),Insulin name,Exercise,Note',
    ...minutes(480, 6).map(
      (at, i) => `${wall(at)},${quoted(text)},${30 + i},${2 + i},${quoted(text)},,${quoted(text)}`,
    ),
    `2026-03-03 17:00,,,,,${quoted(text)},${quoted(text)}`,
  ];
  const records = minutes(2 * 1440, 30).map((at, i) => ({
    time: at.slice(0, 16),
    'glucose mg/dL': 100 + i,
    note: text,
    [text]: text,
  }));
  const sheet = workbookOf({
    [inXml(text)]: {
      1: [cellText('Time'), cellText('Sensor glucose (mg/dL)'), cellText(inXml(text)), cellText('Note')],
      2: [stamp(46086.5), number(110), cellText(inXml(text)), cellText(inXml(text))],
      3: [stamp(46086.51), number(112), null, null],
    },
  });
  return [
    { name: `${text}.csv`, bytes: bytes(readings.join('\n')) },
    { name: `log ${text}.csv`, bytes: bytes(logbook.join('\n')) },
    { name: `${text}.json`, bytes: bytes(JSON.stringify(records)) },
    { name: `${text}.xlsx`, bytes: sheet },
  ];
}

async function analysisWith(text: string): Promise<Analysis> {
  const settings = {
    targets: 'adult' as const,
    today: '2026-04-01',
    person: { name: text, code: text, clinic: text },
    compare: { with: 'change' as const, date: '2026-03-03' as never, text },
    medicines: [{ id: text, words: [text], source: text }],
  };
  const analysis = analyse(await openWorkbooks(filesWith(text)), settings as never, 'x');
  if (!analysis.ok) throw new Error(issueLines(tell, analysis.issues).join('\n'));
  return analysis;
}

describe('in every place a text enters, and every output', () => {
  test.each(HOSTILE)('%s', async (_, text) => {
    const analysis = await analysisWith(text);
    const files = {
      html: false,
      numbers: true,
      attach: false,
      snapshot: true,
      fhir: true,
      fhirReadings: false,
      further: true,
    };
    const wanted = { paper: 'a4', grey: false, large: false, ...files } as const;
    const tools = {
      words,
      fonts: FONTS,
      version: 'x',
      aboutNumbers: text,
      setAside: (of: Analysis) => setAsideCsv(tell, of),
      openPages: () => Promise.reject(new Error('not asked for')),
    };
    const papers = (await makePapers(analysis, 'P', wanted, tools)).map(({ name, bytes: content }) => ({
      name,
      content: Buffer.from(Array.isArray(content) ? content.join('') : content),
    }));
    for (const { name, content } of papers) expectInertFile(name, content);
    expect(papers.map(({ name }) => name)).toContain('P-set-aside.csv');
    // Other texts say nothing to a reader of HTML.
    for (const voice of /[<>"&]/.test(text) ? (['clinic', 'patient'] as const) : []) {
      expectInertPage(webPage(compose(analysis, words, { voice, paper: 'a4', large: false }), template));
    }
    expectPlainLines(issueLines(tell, analysis.issues).join('\n'));
    const { settings } = JSON.parse(papers.find(({ name }) => name === 'P-analysis.json')!.content.toString());
    expect(settings.person.name).toBe(text);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});
