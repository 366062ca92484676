import { describe, expect, it, test } from 'vitest';
import { rows, tell } from './digest.ts';

const at = '2026-01-14 08:00';

describe('amounts', () => {
  test.each<[string, string, string[]]>([
    ['three decimals of a dose', `Time;Insulin (IU)\n${at};1.250`, ['insulin 1.25 IU']],
    ['with a comma', `Time;Insulin (IU)\n${at};1,250`, ['insulin 1.25 IU']],
    ['without a unit', `Time;Insulin\n${at};1.250`, ['insulin 1.25']],
    ['as a float keeps it', `Time;Insulin (IU)\n${at};0.8500000238418579`, ['insulin 0.8500000238418579 IU']],
    ['three decimals of carbohydrate', `Time;Carbs (g)\n${at};45.125`, ['meal 45.125 g']],
    // A thousand milligrams is a usual tablet; nobody takes a thousand units.
    [
      'a medicine in thousands or decimals stays text',
      `Time;Medication;Dose (mg)\n${at};x;1.000`,
      ['medication [x] "1.000"'],
    ],
    ['a dose with its name', `Time;Insulin\n${at};rapid, 6 IU`, ['insulin 6 IU [rapid]']],
    ['a dose before its name', `Time;Insulin\n${at};6,5 IE schnell`, ['insulin 6.5 IU [schnell]']],
    ['a name that ends in a number', `Time;Insulin\n${at};Mix 30: 12 U`, ['insulin 12 IU [Mix 30]']],
    [
      'two doses in a cell stay text',
      `Time;Insulin\n${at};rapid 6 IU / long 20 IU`,
      ['insulin "rapid 6 IU / long 20 IU"'],
    ],
    ['a named dose in milligrams stays text', `Time;Insulin\n${at};rapid, 6 mg`, ['insulin "rapid, 6 mg"']],
  ])('%s', (_, text, notes) => {
    expect(tell(text).notes).toEqual(notes.map((note) => `${at} ${note}`));
  });

  it.each(['Insulin (IU)', 'Carbs (g)'])(
    'a row that says 0 for %s and nothing else is understood, and no note',
    (name) => {
      const digest = tell(`Time;${name};Note\n${at};0;\n${at};4;\n${at};;\n`);
      expect(digest.notes).toHaveLength(1);
      expect(digest.issues).toEqual(['note no-value 4', 'note amount-zero']);
      expect(digest.fates).toBe('iins');
    },
  );

  it('a dose of 0 in a row of its kind is no dose', () => {
    const digest = tell(`Time;Kind;Amount;Unit\n${at};sensor;102;mg/dL\n${at};insulin;0;IU\n${at};insulin;3;IU\n`);
    expect(digest.notes).toEqual([`${at} insulin 3 IU [insulin]`]);
    expect(digest.issues).toEqual(['note amount-zero']);
  });
});

describe('medicine is no insulin', () => {
  test.each<[string, string]>([
    ['Non-insulin medication', 'medication [metformin]'],
    ['Oral medication', 'medication [metformin]'],
    ['Tabletten', 'medication [metformin]'],
    ['Лекарства', 'medication [metformin]'],
    ['服薬', 'medication [metformin]'],
    ['錠剤', 'medication [metformin]'],
    ['Diabetes tablets', 'medication [metformin]'],
    ['Comprimés', 'medication [metformin]'],
  ])('under %s', (name, note) => {
    expect(tell(`Time;${name}\n${at};metformin`).notes).toEqual([`${at} ${note}`]);
    const kinds = tell(`Time;Kind;Value;Unit;Details\n${at};sensor;102;mg/dL;\n${at};${name};;;metformin\n`);
    expect(kinds.notes).toEqual([`${at} ${note}`]);
  });
  it('even in units of insulin', () => {
    expect(tell(`Time;Other meds (units)\n${at};2`).notes).toEqual([`${at} medication [2]`]);
    expect(tell(`Time;Kind;Amount;Unit\n${at};Sensor;102;mg/dL\n${at};Non-insulin medication;2;tablets`).notes).toEqual(
      [`${at} medication 2 tablet [Non-insulin medication]`],
    );
  });
});

describe('food', () => {
  it('carries its carbohydrate, whatever else is counted', () => {
    const digest = tell(
      `Time;Dietary intake;Total carb (g);Dietary fiber (g);Sugar (g);Protein (g);Total fat (g);Calories\n${at};oats;45;6;12;9;5;300\n`,
    );
    expect(digest.notes).toEqual([
      `${at} meal 45 g [oats] "Dietary fiber (g) 6, Sugar (g) 12, Protein (g) 9, Total fat (g) 5, Calories 300"`,
    ]);
  });
  it.each(['Total carb', 'total_carb', 'Net carbs (g)', 'Kohlenhydrate gesamt'])('%s is carbohydrate', (name) => {
    expect(tell(`Time;${name}\n${at};45`).notes[0]).toMatch(/ meal 45/);
  });
  it('keeps every line of a cell', () => {
    expect(tell(`Time;Food;Carbs (g)\n${at};"oats\nmilk\n\napple";45`).notes).toEqual([
      `${at} meal 45 g [oats, milk, apple]`,
    ]);
  });
});

describe('exercise', () => {
  it.each(['Exercise (min)', 'Minutes of exercise', 'Bewegung (Min)', 'Физическая нагрузка (мин)', '運動（分）'])(
    '%s alone is exercise',
    (name) => {
      expect(tell(`Time;${name}\n${at};30`).notes[0]).toMatch(/ exercise 30 minutes/);
    },
  );
  it.each(['km', 'steps', 'kcal', 'furlongs'])('%s are no minutes', (unit) => {
    const digest = tell(
      `Time;Kind;Amount (min);Unit;Details\n${at};sensor;102;mg/dL;\n${at};exercise;5;${unit};walk\n${at};exercise;5;min;walk\n`,
    );
    expect(digest.notes).toEqual([`${at} exercise [walk] "5 ${unit}"`, `${at} exercise 5 minutes [walk]`]);
  });
  it('a column of kilometres is none', () => {
    expect(tell(`Time;Glucose (mg/dL);Walk (km)\n${at};102;5`).notes).toEqual([]);
  });
});

describe('background insulin of a pump', () => {
  const rate = (i: number) => (i < 10 ? 0.8 : i < 20 ? 0 : 1.25);
  it.each([
    'Basal rate (U/h)',
    'Basal insulin rate (IU/hr)',
    'Temp basal',
    'Basalrate (IE/h)',
    'Basale IE/Std',
    'Débit basal U/h',
    'Базальный инсулин (ЕД/ч)',
  ])('is a rate that is told where it changes: %s', (name) => {
    const digest = tell(
      `Time;Glucose (mg/dL);${name}\n${rows(30, (i, t) => `${t.slice(0, 16)};${100 + i};${rate(i)}`)}`,
    );
    expect(digest.readings).toHaveLength(30);
    expect(
      digest.notes.map((note) =>
        note
          .replace(/^\S+ \S+ /, '')
          .replace(/ \[.*/, '')
          .replace(' IU/h', ''),
      ),
    ).toEqual(['insulin-rate 0.8', 'insulin-rate 0', 'insulin-rate 1.25']);
  });

  it('is told by kinds, suspensions too', () => {
    const digest = tell(
      `Time;Kind;Amount;Unit\n${at};sensor;102;mg/dL\n${at};Basal rate;0.8;U/h\n${at};Temporary basal;0.4;U/h\n${at};Suspend pump;;\n${at};Bolus insulin;4;U\n`,
    );
    expect(digest.notes.filter((note) => note.includes('insulin-rate'))).toHaveLength(3);
    expect(digest.notes.filter((note) => / insulin /.test(note))).toEqual([`${at} insulin 4 IU [Bolus insulin]`]);
  });

  it('is known by how often it comes, where its column does not say so', () => {
    const many = tell(`Time;Basal insulin (U)\n${rows(40, (i, t) => `${t.slice(0, 16)};${i % 2 ? 0.05 : 0.1}`)}`);
    expect(many.notes.every((note) => note.includes(' insulin-rate '))).toBe(true);
    const injected = tell(
      `Time;Basal insulin (U)\n${rows(20, (i) => `2026-02-${String(i + 1).padStart(2, '0')} 22:00;18`)}`,
    );
    expect(injected.notes.filter((note) => note.includes(' insulin 18 IU'))).toHaveLength(20);
  });

  const given = (dosage: object) =>
    tell(
      JSON.stringify({
        resourceType: 'MedicationAdministration',
        status: 'completed',
        subject: { reference: 'Patient/1' },
        medicationCodeableConcept: { text: 'insulin, rapid' },
        effectiveDateTime: '2026-01-14T08:00:00Z',
        dosage,
      }),
      { zone: 'UTC' },
      'given.json',
    ).notes.map((note) => note.replace(/^\S+ \S+ (?:[+]\S+ )?/, ''));
  // HL7 FHIR R4, MedicationAdministration.dosage.rate[x]: SimpleQuantity or Ratio.
  it.each<[string, object, string]>([
    ['rateQuantity', { rateQuantity: { value: 0.8, code: 'U/h' } }, 'insulin-rate 0.8 IU/h'],
    [
      'rateQuantity in UCUM',
      { rateQuantity: { value: 0.8, code: '[iU]/h', system: 'http://unitsofmeasure.org' } },
      'insulin-rate 0.8 IU/h',
    ],
    [
      'rateRatio',
      { rateRatio: { numerator: { value: 1.2, code: 'U', unit: 'U' }, denominator: { value: 30, code: 'min' } } },
      'insulin-rate 2.4 IU/h',
    ],
    ['a rate in another unit', { rateQuantity: { value: 3, unit: 'mL/h' } }, 'insulin-rate "3 mL/h"'],
    [
      'a dose over a time',
      { dose: { value: 4, code: 'U', unit: 'U' }, rateQuantity: { value: 2, code: 'U/h' } },
      'insulin 4 IU',
    ],
  ])('FHIR: %s', (_, dosage, expected) => {
    const [note] = given(dosage);
    expect(note!.replace(' [insulin, rapid]', '')).toBe(expected);
  });
});
