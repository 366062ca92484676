import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { fitDelimiters, fitOfRecords, onlyDelimiter } from '../../src/readers/table/delimiter.ts';
import { scanRecords } from '../../src/readers/table/records.ts';
import { rows, tell } from './digest.ts';

const TWO = ['2026-01-14 08:00 102 mg/dL', '2026-01-14 08:05 98 mg/dL'];
const BODY = '2026-01-14 08:00,102\n2026-01-14 08:05,98\n';

function utf16(text: string, big: boolean, mark: boolean): Uint8Array {
  const bytes = new Uint8Array((text.length + (mark ? 1 : 0)) * 2);
  const view = new DataView(bytes.buffer);
  const units = mark ? `\ufeff${text}` : text;
  for (let i = 0; i < units.length; i++) view.setUint16(i * 2, units.charCodeAt(i), !big);
  return bytes;
}

describe('letters', () => {
  const text = `Time,Glucose (mg/dL),Note\n2026-01-14 08:00,102,café\n2026-01-14 08:05,98,\n`;
  const latin = Uint8Array.from(text, (letter) => letter.charCodeAt(0));
  test.each<[string, Uint8Array, string]>([
    ['UTF-8', new TextEncoder().encode(text), 'file: utf-8'],
    ['UTF-8 with a mark', new TextEncoder().encode(`\ufeff${text}`), 'file: utf-8'],
    ['UTF-16 little-endian with a mark', utf16(text, false, true), 'file: utf-16le'],
    ['UTF-16 big-endian with a mark', utf16(text, true, true), 'file: utf-16be'],
    ['UTF-16 little-endian without', utf16(text, false, false), 'file: utf-16le'],
    ['UTF-16 big-endian without', utf16(text, true, false), 'file: utf-16be'],
    ['Windows-1252', latin, 'default: windows-1252'],
  ])('%s', (_, bytes, choice) => {
    const digest = tell(bytes);
    expect(digest.readings).toEqual(TWO);
    expect(digest.notes).toEqual(['2026-01-14 08:00 text "café"']);
    expect(digest.choices.encoding).toBe(choice);
  });

  it('says that letters were lost before the file came here', () => {
    expect(tell(`Time,Glucose (mg/dL),Note\n2026-01-14 08:00,102,caf\ufffd\n`).issues).toEqual(['note letters-lost']);
  });

  test.each<[string, number[]]>([
    ['zip', [0x50, 0x4b, 3, 4, 0, 0]],
    ['gzip cut short', [0x1f, 0x8b, 8, 0]],
    ['PDF', [0x25, 0x50, 0x44, 0x46, 0x2d]],
    ['control bytes', Array.from({ length: 200 }, (_, i) => (i * 7) % 20)],
  ])('%s is no text', (_, bytes) => {
    const digest = tell(Uint8Array.from(bytes));
    expect(digest.readings).toEqual([]);
    expect(digest.file.issues.length).toBeGreaterThan(0);
  });
});

describe('delimiter', () => {
  test.each<[string, string, string]>([
    ['comma', `Time,Glucose (mg/dL)\n${BODY}`, 'file: ,'],
    ['semicolon', `Time;Glucose (mg/dL)\n${BODY.replaceAll(',', ';')}`, 'file: ;'],
    ['tab', `Time\tGlucose (mg/dL)\n${BODY.replaceAll(',', '\t')}`, 'file: tab'],
    ['bar', `Time|Glucose (mg/dL)\n${BODY.replaceAll(',', '|')}`, 'file: |'],
    ['sep= line', `sep=;\nTime;Glucose (mg/dL)\n${BODY.replaceAll(',', ';')}`, 'file: ;'],
    ['CRLF', `Time,Glucose (mg/dL)\n${BODY}`.replaceAll('\n', '\r\n'), 'file: ,'],
    ['lone CR', `Time,Glucose (mg/dL)\n${BODY}`.replaceAll('\n', '\r'), 'file: ,'],
  ])('%s', (_, text, choice) => {
    const digest = tell(text);
    expect(digest.readings).toEqual(TWO);
    expect(digest.choices.delimiter).toBe(choice);
  });

  it('takes the one that gives meaning when commas are decimals on every row', () => {
    const digest = tell(`Zeit;Glukose (mmol/L)\n14.01.2026 08:00;5,6\n14.01.2026 08:05;5,7\n`);
    expect(digest.readings).toEqual(['2026-01-14 08:00 5.6 mmol/L', '2026-01-14 08:05 5.7 mmol/L']);
  });

  it('refuses a comma that is both, and shows two rows', () => {
    const digest = tell(`Time,Glucose (mmol/L)\n${rows(8, (i, t) => `${t.slice(0, 16)},5${i === 3 ? '' : `,${i}`}`)}`);
    expect(digest.readings).toEqual([]);
    expect(digest.issues).toEqual(['refusal decimal-mark-is-delimiter 2']);
    expect(digest.file.issues[0]).toMatchObject({ actual: '2026-01-14T08:00,5,0', expected: '2026-01-14T08:15,5' });
  });

  it('reads the same when the decimals are quoted', () => {
    const digest = tell(`Time,Glucose (mmol/L)\n2026-01-14 08:00,"5,6"\n2026-01-14 08:05,"5,7"\n`);
    expect(digest.readings).toEqual(['2026-01-14 08:00 5.6 mmol/L', '2026-01-14 08:05 5.7 mmol/L']);
  });

  it('refuses text without columns', () => {
    expect(tell('one\ntwo\nthree\n').issues).toEqual(['refusal no-columns']);
  });
});

describe('tables', () => {
  test.each<[string, string, string[], string]>([
    ['preamble', `Clinic export\nName,A. Person\n\nTime,Glucose (mg/dL)\n${BODY}`, TWO, 'iiiiuu'],
    ['columns the other way round', 'Glucose (mg/dL),Time\n102,2026-01-14 08:00\n98,2026-01-14 08:05\n', TWO, 'iuu'],
    ['no header', BODY, ['2026-01-14 08:00 102 mg/dL', '2026-01-14 08:05 98 mg/dL'], 'uu'],
    ['names, then units', `Time,Glucose\n(hh:mm),mg/dL\n${BODY}`, TWO, 'iiuu'],
    [
      'header repeated',
      `Time,Glucose (mg/dL)\n2026-01-14 08:00,102\nTime,Glucose (mg/dL)\n2026-01-14 08:05,98\n`,
      TWO,
      'iuiu',
    ],
    [
      'unit changes with a new header',
      'Time,Glucose (mg/dL)\n2026-01-14 08:00,102\nTime,Glucose (mmol/L)\n2026-01-14 08:05,5.6\n',
      ['2026-01-14 08:00 102 mg/dL', '2026-01-14 08:05 5.6 mmol/L'],
      'iuiu',
    ],
    ['sums below', `Time,Glucose (mg/dL)\n${BODY}Average,100\nTotal rows: 2,\n`, TWO, 'iuuii'],
    ['blank lines between', `Time,Glucose (mg/dL)\n\n${BODY}\n,\n`, TWO, 'iiuuii'],
    ['short row', 'Time,Glucose (mg/dL),Note\n2026-01-14 08:00,102\n2026-01-14 08:05,98,\n', TWO, 'iuu'],
    ['empty cells too many', 'Time,Glucose (mg/dL)\n2026-01-14 08:00,102,,\n2026-01-14 08:05,98,\n', TWO, 'iuu'],
    ['row too long', `Time,Glucose (mg/dL)\n${BODY}2026-01-14 08:10,98,7\n`, TWO, 'iuus'],
    [
      'unclosed quote',
      `Time,Glucose (mg/dL)\n2026-01-14 08:00,102\n2026-01-14 08:02,"99\n2026-01-14 08:05,98\n`,
      TWO,
      'iusu',
    ],
    ['invisible marks in names', `\ufeff\u00a0Time\u200b,Glucose\u00a0(mg/dL)\n${BODY}`, TWO, 'iuu'],
  ])('%s', (_, text, readings, fates) => {
    const digest = tell(text);
    expect(digest.readings).toEqual(readings);
    expect(digest.fates).toBe(fates);
  });

  it('reads two tables, each with its own columns', () => {
    const digest = tell(`Time,Glucose (mg/dL)\n${BODY}\nTime,Food,Carbs (g)\n2026-01-14 08:10,toast,25\n`);
    expect(digest.readings).toEqual(TWO);
    expect(digest.notes).toEqual(['2026-01-14 08:10 meal 25 g [toast]']);
  });

  it('names physical lines behind a quoted line break', () => {
    const digest = tell('Time,Glucose (mg/dL),Note\n2026-01-14 08:00,102,"two\nlines"\n2026-01-14 08:05,zz,\n');
    expect(digest.issues).toEqual(['warning value-not-a-number 4']);
  });

  it('counts what stands above the table without repeating it', () => {
    const digest = tell(`Name,A. Person\nBorn,1970-01-01\nTime,Glucose (mg/dL)\n${BODY}`);
    expect(JSON.stringify(digest.file.issues)).not.toContain('Person');
    expect(digest.file.issues[0]).toMatchObject({ code: 'lines-above-table', count: 2 });
  });

  test.each<[string, string, string]>([
    ['nothing', '', 'warning file-empty'],
    ['blanks only', '\n \n\t\n', 'warning file-empty'],
    ['names only', 'Time,Glucose (mg/dL)\n', 'warning no-rows'],
    ['numbers under names that say something else', `Time,Heart rate\n${BODY}`, 'refusal columns-unclear'],
    ['a letter', 'Dear team, I was well.\nThen, on Monday, I was not.\n', 'refusal columns-unclear'],
    [
      'two numbers, no names',
      rows(9, (i, t) => `${t.slice(0, 16)},${100 + i},${120 - i}`),
      'refusal two-value-columns',
    ],
    [
      'two sensor columns that disagree',
      `Time,Glucose A (mg/dL),Glucose B (mg/dL)\n${rows(9, (i, t) => `${t.slice(0, 16)},${100 + i},${150 - i}`)}`,
      'refusal two-value-columns',
    ],
  ])('%s', (_, text, issue) => {
    const digest = tell(text);
    expect(digest.readings).toEqual([]);
    expect(digest.issues).toContain(issue);
  });

  it('takes one of two columns that say the same in two units', () => {
    const digest = tell('Time,Glucose (mg/dL),Glucose (mmol/L)\n2026-01-14 08:00,102,5.7\n2026-01-14 08:05,98,5.4\n');
    expect(digest.readings).toEqual(TWO);
  });

  it('keeps two sensor columns that fill different rows', () => {
    const digest = tell('Time,Sensor (mg/dL),Scan (mg/dL)\n2026-01-14 08:00,102,\n2026-01-14 08:05,,98\n');
    expect(digest.readings).toEqual(TWO);
  });
});

describe('names in other languages', () => {
  // Plain words of each language, from memory.
  test.each<[string, string]>([
    ['Spanish', 'Fecha y hora;Glucosa (mg/dL);Hidratos (g)'],
    ['German', 'Zeitpunkt;Gewebezucker (mg/dl);Kohlenhydrate (g)'],
    ['French', 'Date et heure;Glycémie capteur (mg/dL);Glucides (g)'],
    ['Italian', 'Data e ora;Glicemia sensore (mg/dL);Carboidrati (g)'],
    ['Portuguese', 'Data e hora;Glicose (mg/dL);Carboidratos (g)'],
    ['Dutch', 'Tijdstip;Glucosewaarde (mg/dL);Koolhydraten (g)'],
    ['Swedish', 'Tidpunkt;Glukosvärde (mg/dL);Kolhydrater (g)'],
    ['Finnish', 'Aika;Kudossokeri (mg/dl);Hiilihydraatit (g)'],
    ['Polish', 'Data i godzina;Stężenie glukozy (mg/dL);Węglowodany (g)'],
    ['camel case', 'startTime;sensorGlucose (mg/dL);carbGrams (g)'],
    ['underscores', 'event_time;glucose_mg_dl;carbs_g'],
  ])('%s', (_, header) => {
    const digest = tell(`${header}\n2026-01-14 08:00;102;\n2026-01-14 08:05;98;25\n`);
    expect(digest.readings).toEqual(TWO);
    expect(digest.notes).toEqual(['2026-01-14 08:05 meal 25 g']);
  });
});

describe('the only delimiter of a text', () => {
  it('is told from the split text as by counting', () => {
    const cell = fc.stringMatching(/^[a-z0-9 :-]{0,4}$/);
    const line = fc.array(cell, { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(
        fc.array(line, { minLength: 1, maxLength: 12 }),
        fc.constantFrom(',', ';', '\t', '|'),
        fc.constantFrom('\n', '\r\n', '\r', '\n\n'),
        (lines, delimiter, end) => {
          const bytes = new TextEncoder().encode(lines.map((cells) => cells.join(delimiter)).join(end));
          const only = onlyDelimiter(bytes);
          if (only === undefined) return;
          expect(fitOfRecords(scanRecords(bytes, only))).toEqual(fitDelimiters(bytes));
        },
      ),
    );
  });

  it('is none beside another, or where quotes may hide it', () => {
    const of = (text: string) => onlyDelimiter(new TextEncoder().encode(text));
    expect([of('a;b'), of('a;1,5'), of('"a";b'), of('ab')]).toEqual([0x3b, undefined, undefined, undefined]);
  });
});
