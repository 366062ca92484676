import { describe, expect, it, test } from 'vitest';
import languages from '../../src/readers/table/languages.json' with { type: 'json' };
import limits from '../../src/readers/table/limits.json' with { type: 'json' };
import scripts from '../../src/readers/table/scripts.json' with { type: 'json' };
import { conceptsOf, plain, tokens } from '../../src/readers/table/vocabulary.ts';
import { rows, tell } from './digest.ts';

/** Lines of an invented logbook in that language; words from memory of everyday forms. */
const LOGBOOKS: Record<string, string> = {
  russian: 'Время;Глюкоза датчика (ммоль/л);Быстрый инсулин (ЕД);Углеводы (г);Заметки',
  ukrainian: 'Час;Глюкоза сенсора (ммоль/л);Інсулін (ОД);Вуглеводи (г);Примітка',
  bulgarian: 'Време;Глюкоза от сензора (mmol/L);Инсулин (ЕД);Въглехидрати (г);Бележка',
  greek: 'Ώρα;Γλυκόζη αισθητήρα (mmol/L);Ινσουλίνη (IU);Υδατάνθρακες (γρ);Σημείωση',
  arabic: 'الوقت;جلوكوز المستشعر (mmol/L);أنسولين (وحدة);كربوهيدرات (غ);ملاحظات',
  hebrew: "זמן;גלוקוז חיישן (mmol/L);אינסולין (יח');פחמימות (גר');הערות",
  chinese: '时间;传感器葡萄糖（mmol/L）;胰岛素（单位）;碳水化合物（克）;备注',
  japanese: '日時;センサーグルコース値（mmol/L）;インスリン（単位）;炭水化物（ｇ）;メモ',
  korean: '측정 시간;센서 포도당 (mmol/L);인슐린 (단위);탄수화물 (g);메모',
  thai: 'เวลา;ระดับน้ำตาลเซ็นเซอร์ (mmol/L);อินซูลิน (หน่วย);คาร์โบไฮเดรต (กรัม);หมายเหตุ',
  turkish: 'Zaman;Sensör glikozu (mmol/L);İnsülin (Ü);Karbonhidrat (g);Notlar',
  hungarian: 'Időpont;Szenzor glükóz (mmol/L);Inzulin (NE);Szénhidrát (g);Megjegyzés',
  czech: 'Čas;Glykémie ze senzoru (mmol/L);Inzulín (j.);Sacharidy (g);Poznámky',
  slovak: 'Čas;Glykémia senzor (mmol/L);Inzulín (j);Sacharidy (g);Poznámka',
  croatian: 'Vrijeme;Glukoza senzora (mmol/L);Inzulin (j);Ugljikohidrati (g);Napomena',
  romanian: 'Ora;Glicemie senzor (mmol/L);Insulină (U);Carbohidrați (g);Observații',
  lithuanian: 'Laikas;Jutiklio gliukozė (mmol/L);Insulinas (VV);Angliavandeniai (g);Pastabos',
  latvian: 'Laiks;Sensora glikoze (mmol/L);Insulīns (U);Ogļhidrāti (g);Piezīmes',
  estonian: 'Aeg;Anduri glükoos (mmol/L);Insuliin (U);Süsivesikud (g);Märkused',
  danish: 'Tid;Vævsglukose (mmol/L);Insulin (IE);Kulhydrat (g);Bemærkning',
  finnish: 'Aika;Kudossokeri, sensori (mmol/L);Insuliini (ky);Hiilihydraatit (g);Muistiinpano',
};

describe('a logbook in', () => {
  test.each(Object.entries(LOGBOOKS))('%s', (_, header) => {
    const digest = tell(
      `${header}\n${rows(30, (i, t) => `${t.slice(0, 16)};${(5 + (i % 9) / 10).toFixed(1)};${i === 4 ? '3;45;x' : ';;'}`)}`,
    );
    expect(digest.readings).toHaveLength(30);
    expect(digest.readings[4]).toMatch(/ 5\.4 mmol\/L$/);
    const label = digest.notes.find((note) => note.includes('insulin'))?.includes('[')
      ? / insulin 3 IU \[.*\]$/
      : / insulin 3 IU$/;
    expect(digest.notes).toEqual([
      expect.stringMatching(/ meal 45 g$/),
      expect.stringMatching(label),
      expect.stringMatching(/ text "x"$/),
    ]);
  });
});

/** What is measured beside glucose, or worked out of it, in a few of them. */
test.each([
  'Холестерин (ммоль/л)',
  'Средняя глюкоза',
  'Глюкоза в моче',
  'Целевая глюкоза',
  'Μέση γλυκόζη',
  'Γλυκόζη ούρων',
  'متوسط الجلوكوز',
  'גלוקוז בשתן',
  '平均血糖',
  '尿糖',
  '予測グルコース',
  '목표 혈당',
  'Ortalama glikoz',
  'İdrar glikozu',
  'Átlagos glükóz',
  'Průměrná glukóza',
  'Vidutinė gliukozė',
])('%s is no reading', (name) => {
  expect(conceptsOf(tokens(name.replace(/\(.*\)/, '')))).toContain('other');
});

it('keeps its words as they are matched: small, without accents', () => {
  for (const table of [...Object.values(languages), ...Object.values(scripts), limits])
    for (const words of Object.values(table)) expect(words).toBe(plain(words));
});

it('knows a meal from the time', () => {
  expect(tell('Zeit;Mahlzeit\n2026-01-14 08:00;Suppe').notes).toEqual(['2026-01-14 08:00 meal [Suppe]']);
});
