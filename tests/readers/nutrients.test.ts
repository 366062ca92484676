import { describe, expect, it, test } from 'vitest';
import { columnOf } from '../../src/readers/table/header.ts';
import { tell } from './digest.ts';

const at = '2026-01-14 08:00';

describe('what food holds beside carbohydrate', () => {
  test.each<[string, string, string[]]>([
    [
      'beside carbohydrate',
      `Time;Carbs (g);Protein (g);Fat (g)\n${at};45;12;8`,
      ['meal 45 g "Protein (g) 12, Fat (g) 8"'],
    ],
    [
      'a meal with protein keeps its carbohydrate in any order',
      `Time;Protein (g);Carbs (g)\n${at};12;45`,
      ['meal 45 g "Protein (g) 12"'],
    ],
    ['fibre is no carbohydrate', `Time;Total carb;Dietary fiber\n${at};45;5`, ['meal 45 "Dietary fiber 5"']],
    ['calories are none', `Time;Food;Calories (kcal)\n${at};soup;310`, ['meal [soup] "Calories (kcal) 310"']],
    [
      'protein alone is a meal without carbohydrate',
      `Time;Carbs (g);Protein (g)\n${at};;12`,
      ['meal "Protein (g) 12"'],
    ],
    ['zeros are nothing', `Time;Carbs (g);Protein (g);Fat (g)\n${at};45;0;0.0`, ['meal 45 g']],
    [
      'sugar among them is sugar in food',
      `Time;Carbs (g);Sugar;Protein;Fat\n${at};45;30;12;8`,
      ['meal 45 g "Sugar 30, Protein 12, Fat 8"'],
    ],
  ])('%s', (_, text, notes) => {
    expect(tell(text).notes).toEqual(notes.map((note) => `${at} ${note}`));
  });

  // From memory: the usual words of labels and food diaries.
  test.each([
    ['Kohlenhydrate (g)', 'Eiweiß (g)', 'Fett (g)', 'Ballaststoffe (g)', 'Kalorien'],
    ['Carbohidratos (g)', 'Proteínas (g)', 'Grasas (g)', 'Fibra (g)', 'Calorías'],
    ['Glucides (g)', 'Protéines (g)', 'Lipides (g)', 'Fibres (g)', 'Calories'],
    ['Carboidrati (g)', 'Proteine (g)', 'Grassi (g)', 'Fibre (g)', 'Calorie'],
    ['Koolhydraten (g)', 'Eiwit (g)', 'Vetten (g)', 'Vezels (g)', 'Energie (kcal)'],
    ['Hiilihydraatit (g)', 'Proteiini (g)', 'Rasva (g)', 'Kuitu (g)', 'Energia (kcal)'],
    ['Węglowodany (g)', 'Białko (g)', 'Tłuszcz (g)', 'Błonnik (g)', 'Kalorie'],
    ['Углеводы (г)', 'Белки (г)', 'Жиры (г)', 'Клетчатка (г)', 'Калории'],
    ['炭水化物 (g)', 'たんぱく質 (g)', '脂質 (g)', '食物繊維 (g)', 'カロリー'],
  ])('are known as what they are: %s', (carbs, ...others) => {
    const { notes, file } = tell(`Time;${[carbs, ...others].join(';')}\n${at};45;12;8;6;310`);
    expect(notes).toEqual([`${at} meal 45 g "${others.map((name, i) => `${name} ${[12, 8, 6, 310][i]}`).join(', ')}"`]);
    expect(file.columns?.map(({ role }) => role)).toEqual([
      ...['time', 'carbohydrate'],
      ...others.map(() => 'nutrient'),
    ]);
  });

  test.each(['Body fat (%)', 'Active energy (kcal)', 'Calories burned', 'Protein in urine (mg/L)'])(
    '%s is nothing eaten',
    (name) => {
      expect(tell(`Time;Carbs (g);${name}\n${at};45;12`).notes).toEqual([`${at} meal 45 g`]);
    },
  );

  it('is left alone where nothing else is eaten', () => {
    const digest = tell(`Time;Glucose (mg/dL);Protein (g)\n${at};102;12`);
    expect(digest.notes).toEqual([]);
    expect(digest.file.columns?.at(-1)).toMatchObject({ name: 'Protein (g)', role: 'ignore' });
  });

  test.each(['Protein', 'Dietary fiber', 'Fett', 'Grasas'])(
    'rows of the kind %s give no grams of carbohydrate',
    (kind) => {
      const rows = `${at};sensor;102;mg/dL\n${at};Meal;45;g\n${at};${kind};12;g`;
      const { notes } = tell(`Time;Kind;Value;Unit\n${rows}\n`);
      expect(notes).toEqual([`${at} meal 45 g [Meal]`, `${at} meal "${kind} 12 g"`]);
    },
  );

  it('a layout can say so', () => {
    expect(columnOf(1, 'Stuff').role).toBe('ignore');
    const layout = { meanings: { Stuff: 'nutrient' } };
    expect(tell(`Time;Carbs (g);Stuff\n${at};45;12`, { layout }).notes).toEqual([`${at} meal 45 g "Stuff 12"`]);
  });
});
