import { describe, expect, it, test } from 'vitest';
import { rows, tell } from './digest.ts';

describe('notes in columns of their own', () => {
  const at = '2026-01-14 08:00';
  test.each<[string, string, string[]]>([
    ['meal', `Time;Carbs (g);Food\n${at};45;toast`, ['meal 45 g [toast]']],
    ['meal without food', `Time;Carbs (g)\n${at};45`, ['meal 45 g']],
    ['meal without amount', `Time;Food\n${at};toast`, ['meal [toast]']],
    ['meal with its name', `Time;Meal type;Meal tag;carbs_g\n${at};Lunch;soup;45`, ['meal 45 g [soup] "Lunch"']],
    ['unit in the cell', `Time;Carbs;Food\n${at};45 g;toast`, ['meal 45 g [toast]']],
    ['no unit anywhere', `Time;Carbs;Food\n${at};45;toast`, ['meal 45 [toast]']],
    ['exchanges stay text', `Time;Carbs (g);Food\n${at};2 exchanges;toast`, ['meal [toast] "2 exchanges"']],
    ['insulin', `Time;Insulin (IU);Insulin kind\n${at};6;rapid`, ['insulin 6 IU [rapid]']],
    ['insulin in U', `Time;Insulin (U)\n${at};6,5`, ['insulin 6.5 IU']],
    ['two kinds of insulin', `Time;Bolus (U);Basal (U)\n${at};6;18`, ['insulin 6 IU [bolus]', 'insulin 18 IU [basal]']],
    ['dose written as a sum', `Time;Insulin (IU)\n${at};6+2`, ['insulin "6+2"']],
    ['exercise', `Time;Exercise;Duration (min)\n${at};brisk walk;35`, ['exercise 35 minutes [brisk walk]']],
    ['exercise in seconds', `Time;Activity;Duration (s)\n${at};walk;2700`, ['exercise 45 minutes [walk]']],
    ['exercise as a clock', `Time;Exercise;Duration\n${at};walk;00:45`, ['exercise 45 minutes [walk]']],
    ['exercise without unit', `Time;Exercise;Duration\n${at};walk;45`, ['exercise [walk] "45"']],
    [
      'active time before slot',
      `Time;Activity;Duration (s);Active time (s)\n${at};walk;900;120`,
      ['exercise 2 minutes [walk]'],
    ],
    ['medicine', `Time;Medication;Dose (mg)\n${at};tablets;500`, ['medication 500 mg [tablets]']],
    ['a dose that names no medicine', `Time;Dose\n${at};500`, ['medication 500']],
    ['insulin in a unit that is none', `Time;Insulin (mg)\n${at};5`, ['insulin "5 mg"']],
    ['finger stick', `Time;Fingerstick (mmol/L)\n${at};5.6`, ['fingerstick 5.6 mmol/L']],
    ['calibration', `Time;Calibration (mg/dL)\n${at};110`, ['calibration 110 mg/dL']],
    ['alarm', `Time;Alarm\n${at};low soon`, ['alarm [low soon]']],
    ['sensor change', `Time;Sensor change\n${at};new one`, ['sensor "new one"']],
    ['how a value relates to a meal', `Time;Meal\n${at};before lunch`, ['text "before lunch"']],
    ['units beside a kind of insulin', `Time;Insulin type;Units\n${at};rapid;6`, ['insulin 6 IU [rapid]']],
    ['words', `Time;Note\n${at};felt fine`, ['text "felt fine"']],
  ])('%s', (_, text, notes) => {
    const digest = tell(text);
    expect(digest.notes).toEqual(notes.map((note) => `${at} ${note}`));
    expect(digest.fates).toBe('in');
  });

  it('gives a reading and several notes from one row', () => {
    const digest = tell(`Time;Glucose (mg/dL);Carbs (g);Insulin (IU);Note\n${at};102;45;6;ate out`);
    expect(digest.readings).toEqual([`${at} 102 mg/dL`]);
    expect(digest.notes.map((note) => note.split(' ')[2])).toEqual(['meal', 'insulin', 'text']);
    expect(digest.fates).toBe('iu');
  });

  it('takes zeros that fill a column for fillers', () => {
    const digest = tell(`Time;Glucose (mg/dL);Carbs (g);Insulin (IU)\n${at};102;0;0`);
    expect(digest.notes).toEqual([]);
  });

  it.each(['Insulin on board (U);1.2', 'Active insulin (U);1.2', 'Calibration;no', 'Exercise;none', 'Sensor;S-12'])(
    'takes nothing from %s',
    (column) => {
      const [name, cell] = column.split(';');
      const digest = tell(`Time;Glucose (mg/dL);${name}\n${at};102;${cell}`);
      expect(digest.readings).toEqual([`${at} 102 mg/dL`]);
      expect(digest.notes).toEqual([]);
    },
  );

  it('does not call rest exercise', () => {
    const digest = tell(`Time;Activity type;Duration (s)\n${at};SEDENTARY;900\n${at};WALKING;900\n`);
    expect(digest.notes).toEqual([`${at} exercise 15 minutes [WALKING]`]);
    expect(digest.issues).toEqual(['note rest-not-exercise']);
    expect(digest.fates).toBe('iin');
  });

  it('keeps a note with a date and no clock as a note of that day', () => {
    const digest = tell(`Date;Time;Note\n2026-01-14;;felt fine\n2026-01-15;09:00;better`);
    expect(digest.notes).toEqual(['2026-01-14 text "felt fine"', '2026-01-15 09:00 text "better"']);
    const midnights = [14, 15, 16].map((d) => `${d}/01/2026 00:00:00;walk`).join('\n');
    expect(tell(`Date;Note\n${midnights}`).notes[2]).toBe('2026-01-16 text "walk"');
    expect(tell('Date;Note\n2026-01-14;felt fine').notes).toEqual(['2026-01-14 text "felt fine"']);
  });
});

describe('rows told apart by a kind', () => {
  const text = [
    'Time;Kind;Amount;Unit;Details',
    '2026-01-14 08:00;sensor;102;mg/dL;',
    '2026-01-14 08:01;food;45;g;toast',
    '2026-01-14 08:02;insulin;6;IU;rapid',
    '2026-01-14 08:03;exercise;30;min;walk',
    '2026-01-14 08:04;fingerstick;110;mg/dL;',
    '2026-01-14 08:05;remark;;;felt fine',
    '2026-01-14 08:06;alarm;55;mg/dL;low',
    '2026-01-14 08:07;moonphase;3;;',
  ].join('\n');
  it('reads each by its kind and sets the unknown aside', () => {
    const digest = tell(text);
    expect(digest.readings).toEqual(['2026-01-14 08:00 102 mg/dL']);
    expect(digest.notes).toEqual([
      '2026-01-14 08:01 meal 45 g [toast]',
      '2026-01-14 08:02 insulin 6 IU [insulin rapid]',
      '2026-01-14 08:03 exercise 30 minutes [walk]',
      '2026-01-14 08:04 fingerstick 110 mg/dL',
      '2026-01-14 08:05 text "felt fine"',
      '2026-01-14 08:06 alarm [alarm] "55; low"',
    ]);
    expect(digest.issues).toEqual(['warning kind-unknown 9']);
    expect(digest.fates).toBe('iunnnnnns');
  });

  it('knows the kinds under a header that does not say so', () => {
    expect(tell(text.replace('Kind', 'Entry')).readings).toHaveLength(1);
  });
});

describe('persons', () => {
  it('tells every code once', () => {
    const digest = tell(
      'Patient code;Time;Glucose (mg/dL)\nA-1;2026-01-14 08:00;102\nA-2;2026-01-14 08:00;98\nA-1;2026-01-14 08:05;99\n',
    );
    expect(digest.file.persons).toEqual(['A-1', 'A-2']);
  });

  it('are told apart by a column called just id beside glucose', () => {
    const body = rows(20, (i, t) => `${i < 10 ? 7 : 8},${t.slice(0, 16)},${100 + i}`);
    expect(tell(`id,time,gl\n${body}`).file.persons).toEqual(['7', '8']);
    const numbered = rows(20, (i, t) => `${i},${t.slice(0, 16)},${100 + i}`);
    expect(tell(`id,time,gl\n${numbered}`).file.persons).toEqual([]);
  });
});
