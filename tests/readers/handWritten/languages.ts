import { at, comma, dmy, type Export, hm, iso, mg, mm, rows, seldom, two } from './rows.ts';

/** Logs and exports in many languages. */
export const languages: Record<string, Export> = {
  'a German clinic, a numbered table under two lines of title': {
    text:
      `Klinik am See;;;;\nKennung;K-17;;;\nMessreihe Gewebezucker;;;;\nNr.;Datum;Uhrzeit;Gewebezucker [mg/dl];Bemerkung\n` +
      rows((i) => `${i + 1};${dmy(i)};${hm(i)};${mg(i)};${seldom(i, 7, 'Spaziergang')}`),
    unit: 'mg/dL',
    notes: { text: 3 },
  },
  'a French study, hours as 6h10 and decimal commas': {
    text:
      `sujet;jour;heure;glycémie interstitielle (mmol/L);commentaire\n` +
      rows(
        (i) => `S04;${dmy(i, '/')};${at(i).hour}h${two(at(i).minute)};${comma(mm(i))};${seldom(i, 5, 'repas copieux')}`,
      ),
    unit: 'mmol/L',
    notes: { text: 3 },
  },
  'a Spanish diary at home': {
    text:
      `Mi diario\n\nFecha;Hora;Azúcar;Insulina rápida;Comida;Hidratos\n` +
      rows(
        (i) =>
          `${dmy(i, '/')};${hm(i)};${mg(i)};${seldom(i, 9, '4')};${seldom(i, 10, 'tostada')};${seldom(i, 10, '30')}`,
      ),
    unit: 'mg/dL',
    notes: { insulin: 3, meal: 3 },
  },
  'a Polish log': {
    text:
      `Data i godzina;Glukoza z sensora (mg/dl);Posiłek (g węglowodanów);Uwagi\n` +
      rows((i) => `${iso(i)} ${hm(i)};${mg(i)};${seldom(i, 3, '40')};${seldom(i, 4, 'spacer')}`),
    unit: 'mg/dL',
    notes: { meal: 3, text: 3 },
  },
  'an Italian log, hours as 6.10, the unit in a column': {
    text:
      `Giorno;Ora;Valore sensore;Unità;Pasto;Carboidrati (g);Insulina (U)\n` +
      rows(
        (i) =>
          `${dmy(i, '/')};${at(i).hour}.${two(at(i).minute)};${mg(i)};mg/dl;${seldom(i, 6, 'pasta')};${seldom(i, 6, '60')};${seldom(i, 8, '5,5')}`,
      ),
    unit: 'mg/dL',
    notes: { insulin: 3, meal: 3 },
  },
  'a Dutch log': {
    text:
      `tijdstip,weefselglucose mmol/l,koolhydraten,bolus,notitie\n` +
      rows(
        (i) =>
          `${dmy(i, '-')} ${hm(i)},${mm(i)},${seldom(i, 6, '35')},${seldom(i, 6, '3.5')},${seldom(i, 20, 'gefietst')}`,
      ),
    unit: 'mmol/L',
    notes: { insulin: 3, meal: 3, text: 3 },
  },
  'a Swedish log, hours as kl. 6.10': {
    text:
      `Tid;Vävnadsglukos (mmol/l);Kolhydrater (g);Måltidsinsulin (E);Anteckning\n` +
      rows(
        (i) =>
          `${iso(i)} kl. ${at(i).hour}.${two(at(i).minute)};${comma(mm(i))};${seldom(i, 6, '35')};${seldom(i, 6, '3,5')};${seldom(i, 20, 'cyklade')}`,
      ),
    unit: 'mmol/L',
    notes: { insulin: 3, meal: 3, text: 3 },
  },
  'a Finnish log': {
    text:
      `Pvm;Klo;Anturiglukoosi mmol/l;Hiilihydraatit g;Ateriainsuliini ky;Huom\n` +
      rows(
        (i) =>
          `${at(i).day}.${at(i).month}.${at(i).year};${at(i).hour}.${two(at(i).minute)};${comma(mm(i))};${seldom(i, 6, '35')};${seldom(i, 6, '3,5')};${seldom(i, 20, 'kävely')}`,
      ),
    unit: 'mmol/L',
    notes: { insulin: 3, meal: 3, text: 3 },
  },
  'a Portuguese log': {
    text:
      `Data/Hora;Glicose (mg/dL);Evento\n` +
      rows((i) => `${dmy(i, '/')} ${hm(i)};${mg(i)};${seldom(i, 12, 'caminhada')}`),
    unit: 'mg/dL',
    notes: { text: 3 },
  },
  'a Russian log that counts bread units': {
    text:
      `Дата;Время;Сахар (ммоль/л);Хлебные единицы;Короткий инсулин (ед);Примечание\n` +
      rows(
        (i) =>
          `${dmy(i)};${hm(i)};${comma(mm(i))};${seldom(i, 6, '3')};${seldom(i, 6, '4')};${seldom(i, 20, 'прогулка')}`,
      ),
    unit: 'mmol/L',
    notes: { insulin: 3, meal: 3, text: 3 },
  },
  'a German log that counts bread units': {
    text:
      `Zeit;Zucker mg/dl;BE;Bolus IE\n` +
      rows((i) => `${dmy(i)} ${hm(i)};${mg(i)};${seldom(i, 6, '3')};${seldom(i, 6, '4')}`),
    unit: 'mg/dL',
    notes: { insulin: 3, meal: 3 },
  },
  'a Turkish log': {
    text:
      `Tarih;Saat;Doku şekeri (mg/dL);Karbonhidrat (g);Hızlı insülin (Ü);Not\n` +
      rows((i) => `${dmy(i)};${hm(i)};${mg(i)};${seldom(i, 6, '35')};${seldom(i, 6, '4')};${seldom(i, 20, 'yürüyüş')}`),
    unit: 'mg/dL',
    notes: { insulin: 3, meal: 3, text: 3 },
  },
  'a Japanese log': {
    text:
      `日時,センサー値(mg/dL),糖質(g),備考\n` +
      rows(
        (i) =>
          `${at(i).year}/${two(at(i).month)}/${two(at(i).day)} ${hm(i)},${mg(i)},${seldom(i, 6, '35')},${seldom(i, 20, '散歩')}`,
      ),
    unit: 'mg/dL',
    notes: { meal: 3, text: 3 },
  },
  'a Chinese log': {
    text:
      `日期,时间,血糖值(mmol/L),碳水化合物(克),速效胰岛素(单位),备注\n` +
      rows(
        (i) =>
          `${at(i).year}年${at(i).month}月${at(i).day}日,${hm(i)},${mm(i)},${seldom(i, 6, '35')},${seldom(i, 6, '4')},${seldom(i, 20, '散步')}`,
      ),
    unit: 'mmol/L',
    notes: { insulin: 3, meal: 3, text: 3 },
  },
  'a Greek log': {
    text:
      `Ημερομηνία;Ώρα;Γλυκόζη αισθητήρα (mg/dL);Υδατάνθρακες (γρ);Ινσουλίνη γεύματος;Σχόλια\n` +
      rows(
        (i) =>
          `${dmy(i, '/')};${hm(i)};${mg(i)};${seldom(i, 6, '35')};${seldom(i, 6, '4')};${seldom(i, 20, 'περπάτημα')}`,
      ),
    unit: 'mg/dL',
    notes: { insulin: 3, meal: 3, text: 3 },
  },
  'a Czech log': {
    text:
      `Datum;Čas;Glykémie ze senzoru (mmol/l);Sacharidy (g);Rychlý inzulín (j);Poznámka\n` +
      rows(
        (i) =>
          `${at(i).day}. ${at(i).month}. ${at(i).year};${at(i).hour}:${two(at(i).minute)};${comma(mm(i))};${seldom(i, 6, '35')};${seldom(i, 6, '4')};${seldom(i, 20, 'procházka')}`,
      ),
    unit: 'mmol/L',
    notes: { insulin: 3, meal: 3, text: 3 },
  },
  'a Hungarian log': {
    text:
      `Időpont;Szöveti cukor (mmol/l);Szénhidrát (g);Gyors inzulin (NE);Megjegyzés\n` +
      rows(
        (i) =>
          `${at(i).year}.${two(at(i).month)}.${two(at(i).day)}. ${hm(i)};${comma(mm(i))};${seldom(i, 6, '35')};${seldom(i, 6, '4')};${seldom(i, 20, 'séta')}`,
      ),
    unit: 'mmol/L',
    notes: { insulin: 3, meal: 3, text: 3 },
  },
};
