import { at, comma, dmy, type Export, hm, iso, mg, mm, N, rows, seldom, two } from './rows.ts';

/** Files as programs and tidy people write them. */
export const forms: Record<string, Export> = {
  'records whose value and unit stand two objects deep': {
    text: JSON.stringify(
      Array.from({ length: N }, (_, i) => ({
        ts: `${iso(i)}T${hm(i)}:00`,
        measurements: { glucose: { value: mm(i), unit: 'mmol/L' } },
      })),
    ),
    unit: 'mmol/L',
    name: 'a.json',
  },
  'columns as lists of one JSON object': {
    text: JSON.stringify({
      time: Array.from({ length: N }, (_, i) => `${iso(i)} ${hm(i)}`),
      glucose_mgdl: Array.from({ length: N }, (_, i) => mg(i)),
    }),
    unit: 'mg/dL',
    name: 'a.json',
  },
  'a data frame with numbered rows': {
    text: `"","time","glucose_mgdl"\n${rows((i) => `"${i + 1}","${iso(i)} ${hm(i)}:00",${mg(i)}`)}`,
    unit: 'mg/dL',
  },
  'tab-parted, months by name, NaN': {
    text: `Timestamp\tIG_mgdL\tMarker\n${rows((i) => `${two(at(i).day)}-Mar-2026 ${hm(i)}:00\t${mg(i)}\tNaN`)}`,
    unit: 'mg/dL',
  },
  'a data frame with an index, an offset and 140.0 for 140': {
    text:
      `,datetime,glucose,carbs,bolus\n` +
      rows((i) => `${i},${iso(i)} ${hm(i)}:00+01:00,${mg(i)}.0,${seldom(i, 6, '35.0')},${seldom(i, 6, '4.0')}`),
    unit: 'mg/dL',
    notes: { insulin: 3, meal: 3 },
  },
  'an arrow behind the value': {
    text: `Time;Reading\n${rows((i) => `${iso(i)} ${hm(i)};${mg(i)} mg/dl ${['→', '↗', '↘'][i % 3]}`)}`,
    unit: 'mg/dL',
  },
  '6:10am and days first': {
    text:
      `Date,Time,Glucose (mg/dL)\n` +
      rows(
        (i) =>
          `${at(i).day}/${at(i).month}/${at(i).year},${at(i).hour % 12 || 12}:${two(at(i).minute)}${at(i).hour < 12 ? 'am' : 'pm'},${mg(i)}`,
      ),
    unit: 'mg/dL',
  },
  'a table drawn with bars': {
    text:
      `| Time | Glucose (mg/dL) | Note |\n|---|---|---|\n` +
      rows((i) => `| ${iso(i)} ${hm(i)} | ${mg(i)} | ${seldom(i, 6, 'walk')} |`),
    unit: 'mg/dL',
    notes: { text: 3 },
  },
  'lines with # above the table': {
    text:
      `# study: invented\n# units: mmol/L\n# tz: Europe/Helsinki\ntime,glucose\n` +
      rows((i) => `${iso(i)}T${hm(i)},${mm(i)}`),
    unit: 'mmol/L',
  },
  'newest first, a mean after each day': {
    text:
      `Date;Time;Glucose mg/dl\n` +
      (() => {
        let s = '';
        let last = iso(N - 1);
        for (let i = N - 1; i >= 0; i--) {
          if (iso(i) !== last) {
            s += `Average ${last};;148\n`;
            last = iso(i);
          }
          s += `${iso(i)};${hm(i)};${mg(i)}\n`;
        }
        return `${s}Average ${last};;151\n`;
      })(),
    unit: 'mg/dL',
  },
  'events told by a word': {
    text:
      `time,event,value,unit\n` +
      rows((i) => [
        `${iso(i)} ${hm(i)},cgm reading,${mg(i)},mg/dL`,
        ...(i === 3 ? [`${iso(i)} ${hm(i)},sensor started,,`] : []),
        ...(i % 40 === 6 ? [`${iso(i)} ${hm(i)},mealtime bolus,4,U`, `${iso(i)} ${hm(i)},carbs eaten,35,g`] : []),
      ]),
    unit: 'mg/dL',
    notes: { insulin: 3, meal: 3, sensor: 1 },
  },
  'the insulin’s name in a column': {
    text:
      `Date,Time,Sensor (mmol/L),Insulin type,Insulin units,Carbs,Food\n` +
      rows(
        (i) =>
          `${iso(i)},${hm(i)},${mm(i)},${seldom(i, 6, 'rapid')}${seldom(i, 26, 'long')},${seldom(i, 6, '4')}${seldom(i, 26, '14')},${seldom(i, 6, '35')},${seldom(i, 6, 'rice')}`,
      ),
    unit: 'mmol/L',
    notes: { insulin: 6, meal: 3 },
  },
  'every cell quoted, decimal commas': {
    text: `"Zeitpunkt","Glukose","Einheit"\n${rows((i) => `"${dmy(i)} ${hm(i)}","${comma(mm(i))}","mmol/l"`)}`,
    unit: 'mmol/L',
  },
  'times as parts of a day, decimal commas': {
    text:
      `Tag;Zeit;Glukose\n` +
      rows((i) => `${dmy(i)};${comma(((at(i).hour * 60 + at(i).minute) / 1440).toFixed(9))};${mg(i)}`),
    unit: 'mg/dL',
  },
  'exercise beside readings': {
    text:
      `Time,Glucose,Activity,Minutes,Intensity\n` +
      rows((i) => `${iso(i)} ${hm(i)},${mg(i)},${seldom(i, 6, 'swim')},${seldom(i, 6, '30')},${seldom(i, 6, 'hard')}`),
    unit: 'mg/dL',
    notes: { exercise: 3 },
  },
  'finger sticks beside a sensor': {
    text: `Time,CGM mg/dL,Fingerstick mg/dL,Comment\n${rows((i) => `${iso(i)} ${hm(i)},${mg(i)},${seldom(i, 6, '133')},`)}`,
    unit: 'mg/dL',
    notes: { fingerstick: 3 },
  },
  'a dose written as a sum': {
    text:
      `Time,Glucose mg/dL,Rapid insulin,Long insulin\n` +
      rows((i) => `${iso(i)} ${hm(i)},${mg(i)},${seldom(i, 6, '4+2')},${seldom(i, 26, '14')}`),
    unit: 'mg/dL',
    notes: { insulin: 6 },
  },
  'words beyond the sensor': {
    text:
      `Zeit;Gewebezucker mg/dl\n` +
      rows((i) => `${dmy(i)} ${hm(i)};${i === 50 ? 'zu niedrig' : i === 90 ? 'zu hoch' : mg(i)}`),
    unit: 'mg/dL',
  },
  'a participant and a date of export above the table': {
    text:
      `Participant: P-07\nVisit: 2\nSensor worn: left arm\nRead out on: 20.03.2026 10:15\n\nDate Time;CGM [mmol/l];Valid\n` +
      rows((i) => `${dmy(i)} ${hm(i)};${comma(mm(i))};1`),
    unit: 'mmol/L',
  },
  'lines of a log without columns': {
    text: rows((i) => `${iso(i)} ${hm(i)} glucose=${mg(i)} mg/dL`),
    unit: 'mg/dL',
  },
  'columns set with blanks': {
    text: `Date        Time    Glucose\n${rows((i) => `${iso(i)}  ${hm(i)}   ${String(mg(i)).padStart(4)}`)}`,
    unit: 'mg/dL',
  },
  'minutes since the start': {
    text: `Start of recording: 2026-03-17 06:10\nminute;glucose (mg/dL)\n${rows((i) => `${i * 5};${mg(i)}`)}`,
    unit: 'mg/dL',
  },
  'seconds and numbers under two letters': {
    text: JSON.stringify({
      device: 'homemade',
      samples: Array.from({ length: N }, (_, i) => ({ t: at(i).ms / 1000, mgdl: mg(i) })),
    }),
    unit: 'mg/dL',
    name: 'a.json',
  },
  'single blanks': {
    text: `date time glucose mmol\n${rows((i) => `${iso(i)} ${hm(i)} ${mm(i)}`)}`,
    unit: 'mmol/L',
  },
};
