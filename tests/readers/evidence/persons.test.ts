import { describe, expect, it, test } from 'vitest';
import { onePerson } from '../../../src/timeline/order.ts';
import { read, sugar, table } from './tables.ts';

const body = (cell?: (i: number) => string, name = ''): string =>
  table(`Time,Glucose (mg/dL)${cell ? `,${name}` : ''}`, 60, (i) => `${sugar(i)}${cell ? `,${cell(i)}` : ''}`);
const together = (...texts: string[]): string | undefined =>
  onePerson(texts.map((text, i) => read(text, {}, `${i}.csv`)))?.code;

describe('a person named above, below or in the table', () => {
  const places: [
    string,
    (who: { name: string; record: string; born: string; mail: string; user: string }) => string,
  ][] = [
    ['Patient: above', ({ name }) => `Patient: ${name}\n${body()}`],
    ['a cell beside its key', ({ name }) => `Name,${name}\n${body()}`],
    ['a participant', ({ record }) => `Participant,${record}\n${body()}`],
    ['a record number', ({ record }) => `Record number: ${record}\n${body()}`],
    ['a hospital number', ({ record }) => `Hospital no,${record}\n${body()}`],
    ['a birth date', ({ born }) => `Date of birth: ${born}\n${body()}`],
    ['keys above values', ({ name, born }) => `Name,Birth date\n${name},${born}\n${body()}`],
    ['a comment', ({ name }) => `# subject: ${name}\n${body()}`],
    ['below the table', ({ name }) => `${body()}\nPatient: ${name}\n`],
    ['first and last name', ({ name }) => body(() => name.replace(' ', ','), 'First name,Last name')],
    ['a record column', ({ record }) => body(() => record, 'Hospital number')],
    ['an e-mail', ({ mail }) => body(() => mail, 'Contact')],
    ['a user', ({ user }) => body(() => user, 'User')],
    ['other languages', ({ name }) => `Paciente: ${name}\n${body()}`],
    ['wide signs', ({ name }) => `氏名：${name}\n${body()}`],
    ['a key and a number', ({ record }) => `MRN ${record}\n${body()}`],
    ['a case', ({ record }) => `Case no. ${record}\n${body()}`],
    ['a subject', ({ record }) => `Subject ${record}\n${body()}`],
    ['a key and a name', ({ name }) => `Patient ${name}\n${body()}`],
    ['a wearer', ({ name }) => `Wearer: ${name}\n${body()}`],
    ['several in a cell', ({ name, born }) => `Name: ${name}; Sex: f; DOB: ${born}\n${body()}`],
    ['German columns', ({ name }) => body(() => name.replace(' ', ','), 'Vorname,Nachname')],
  ];
  const ada = { name: 'Ada Fjord', record: '88417', born: '1988-03-14', mail: 'ada@example.org', user: 'ada7' };
  const bo = { name: 'Bo Berg', record: '90233', born: '1991-11-02', mail: 'bo@example.org', user: 'bo4' };
  test.each(places)('%s: two people are never one paper, one person is', (_, make) => {
    expect(together(make(ada), make(bo))).toBe('two-persons');
    expect(together(make(ada), make(ada))).toBeUndefined();
    expect(read(make(ada)).readings.count).toBe(60);
  });
  it('two people in one file are seen in columns as well', () => {
    expect(together(body((i) => (i < 30 ? 'Ada,Fjord' : 'Bo,Fjord'), 'First name,Last name'))).toBe('two-persons');
    expect(together(body((i) => (i < 30 ? '88417' : '90233'), 'MRN'))).toBe('two-persons');
  });
  it('one person written in two ways is one', () => {
    expect(together(`Patient: Ada Fjord\n${body()}`, `Name: FJORD, Ada\n${body()}`)).toBeUndefined();
    expect(together(`Patient: Ada Fjord\n${body()}`, `Name: A. Fjord\n${body()}`)).toBeUndefined();
    expect(together(`Patient: Ada Fjord\n${body()}`, `Patient ID: P-17\n${body()}`)).toBeUndefined();
  });
  test.each([
    'Device name: X5',
    'File name: a.csv',
    'Clinic: Northside',
    'Name: unknown',
    'Sensor: S-1',
    'Doctor: B. Smith',
    'Patient Glucose Report',
    'Patient Summary Page',
    'Patient 2026-01-14',
    'Subject Sensor Data',
    'Sensor 12',
    'Clinic North 4',
  ])('no person: %s', (line) => {
    expect(read(`${line}\n${body()}`).persons).toEqual([]);
  });
  it('a day of birth is no name that is shown or compared between people', () => {
    expect(read(`Date of birth: 1988-03-14\n${body()}`).persons).toEqual([]);
  });
});

describe('a bare ID above the table', () => {
  const of = (above: string) =>
    read(`${above}\n\n${table('Time,Glucose (mg/dL)', 60, (i) => String(sugar(i)))}`).persons ?? [];
  test.each([
    ['ID: 12', '12'],
    ['ID,12', '12'],
    ['# id no. P-0017', 'P-0017'],
  ])('says whose it is: %s', (above, code) => {
    expect(of(above)).toEqual([code]);
  });
  test.each(['ID: 4f9a1c77b2', 'ID: 2026-02-01', 'Device ID: 12', 'ID: sensor', 'Export ID: 12'])(
    'is nobody’s: %s',
    (above) => {
      expect(of(above)).toEqual([]);
    },
  );
  test('says nothing beside somebody who is named', () => {
    expect(of('ID: 12\nPatient: Ada Fjord')).toEqual(['Ada Fjord']);
  });
});
