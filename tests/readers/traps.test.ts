import { describe, expect, test } from 'vitest';
import { tell } from './digest.ts';

/**
 * Every trap of delimited text that the project knows, one fixture each, in the order of its own list: shape, values,
 * dates, clock, order and zones, notes. A row says what stands in the file and what must come of it: readings by hour,
 * minute and number, fates of rows (u used, n note, d duplicate, s set aside, i not data), issues by level and code.
 * Common practice of the trade, no source, where no standard is named.
 */
type Trap = [trap: string, file: string | Uint8Array, outcome: string, settings?: Parameters<typeof tell>[1]];

const H = 'Time;Glucose (mg/dL)\n';
const day = (date: string, clock = '08:00', value: string | number = 102): string => `${date} ${clock};${value}\n`;
const run = (count: number, cells: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => cells(i)).join('\n');
const at = (i: number): string =>
  `2026-01-14 ${String(8 + Math.floor(i / 12)).padStart(2, '0')}:${String((i % 12) * 5).padStart(2, '0')}`;
const utf16 = (text: string): Uint8Array => new Uint8Array(Buffer.from(`\ufeff${text}`, 'utf16le'));

function outcomeOf(file: string | Uint8Array, settings?: Parameters<typeof tell>[1]): string {
  const { readings, notes, fates, file: read } = tell(file, settings);
  const short = (lines: string[], from: number) =>
    lines.length > 4
      ? [`${lines.length}: ${lines[0]!.slice(from)} … ${lines.at(-1)!.slice(from)}`]
      : lines.map((line) => line.slice(from));
  const issues = read.issues.map(({ level, code }) => `${level} ${code}`);
  const many = fates.length > 12 ? '' : fates;
  return [many, ...short(readings, 5), ...short(notes, 5), ...[...new Set(issues)]]
    .filter((part) => part !== '')
    .join(' / ');
}

const traps: Record<string, Trap[]> = {
  shape: [
    [
      'the delimiter with even rows outside quotes',
      'Time;Glucose (mg/dL);Note\n2026-01-14 08:00;102;"a;b"\n2026-01-14 08:05;103;a, b\n',
      'iuu / 01-14 08:00 102 mg/dL / 01-14 08:05 103 mg/dL / 01-14 08:00 text "a;b" / 01-14 08:05 text "a, b"',
    ],
    [
      'sep= on the first line',
      `sep=;\n${H}${day('2026-01-14')}`,
      'iiu / 01-14 08:00 102 mg/dL / note lines-above-table',
    ],
    [
      'decimal comma between semicolons',
      'Time;Glucose (mmol/L)\n2026-01-14 12:00;5,6\n',
      'iu / 01-14 12:00 5.6 mmol/L',
    ],
    [
      'decimal comma that is the delimiter too',
      'Time,Glucose (mmol/L)\n2026-01-14 12:00,5,6\n2026-01-14 12:05,6\n2026-01-14 12:10,5,8\n',
      'isss / refusal decimal-mark-is-delimiter',
    ],
    ['decimal comma in quotes', 'Time,Glucose (mmol/L)\n2026-01-14 12:00,"5,6"\n', 'iu / 01-14 12:00 5.6 mmol/L'],
    [
      'thousands or decimals: only one of them is glucose',
      'Time;Glucose (mg/dL)\n2026-01-14 12:00;150.000\n2026-01-14 12:05;151.000\n',
      'iuu / 01-14 12:00 150 mg/dL / 01-14 12:05 151 mg/dL',
    ],
    [
      'a thousand among readings',
      'Time;Glucose (mg/dL)\n2026-01-14 12:00;150\n2026-01-14 12:05;"1,200"\n2026-01-14 12:10;151\n',
      'iusu / 01-14 12:00 150 mg/dL / 01-14 12:10 151 mg/dL / warning value-impossible',
    ],
    [
      'thousands or decimals: another cell tells',
      'Time;Glucose (mmol/L)\n2026-01-14 12:00;5.125\n2026-01-14 12:05;5.6\n',
      'iuu / 01-14 12:00 5.125 mmol/L / 01-14 12:05 5.6 mmol/L',
    ],
    [
      'both marks in one column',
      'Time;Glucose (mmol/L)\n2026-01-14 12:00;5.6\n2026-01-14 12:05;5,7\n',
      'iss / refusal decimal-marks-mixed',
    ],
    [
      'doubled quotes',
      'Time;Glucose (mg/dL);Note\n2026-01-14 08:00;102;"a ""b"" c"\n2026-01-14 08:01;;"x ""y"""\n',
      'iun / 01-14 08:00 102 mg/dL / 01-14 08:00 text "a "b" c" / 01-14 08:01 text "x "y""',
    ],
    [
      'line break in quotes',
      'Time;Glucose (mg/dL);Note\n2026-01-14 08:00;102;"a\nb"\n2026-01-14 08:05;103;\n',
      'iuu / 01-14 08:00 102 mg/dL / 01-14 08:05 103 mg/dL / 01-14 08:00 text "a\nb"',
    ],
    [
      'a quote never closed',
      'Time;Glucose (mg/dL);Note\n2026-01-14 08:00;102;"a\n2026-01-14 08:05;103;\n',
      'isu / 01-14 08:05 103 mg/dL / warning quote-unclosed',
    ],
    [
      'lines above the names',
      `Report\nName;Nobody\n\n${H}${day('2026-01-14')}`,
      'iiiiu / 01-14 08:00 102 mg/dL / note lines-above-table',
    ],
    [
      'no names',
      run(12, (i) => `${at(i)};${100 + i}`),
      'uuuuuuuuuuuu / 12: 01-14 08:00 100 mg/dL … 01-14 08:55 111 mg/dL',
    ],
    [
      'no names, two columns of numbers',
      run(12, (i) => `${at(i)};${100 + i};${150 + i}`),
      'ssssssssssss / refusal two-value-columns',
    ],
    ['names, then units', 'Time;Glucose\n;mg/dL\n2026-01-14 08:00;102\n', 'iiu / 01-14 08:00 102 mg/dL'],
    [
      'the same header again',
      `${H}${day('2026-01-14')}${H}${day('2026-01-14', '08:05')}`,
      'iuiu / 01-14 08:00 102 mg/dL / 01-14 08:05 102 mg/dL',
    ],
    [
      'a header with another unit half-way',
      `${H}${day('2026-01-14')}Time;Glucose (mmol/L)\n${day('2026-01-14', '08:05', 5.6)}`,
      'iuiu / 01-14 08:00 102 mg/dL / 01-14 08:05 5.6 mmol/L',
    ],
    [
      'two tables',
      `${H}${day('2026-01-14')}\nTime;Carbs (g)\n2026-01-14 08:10;45\n`,
      'iuiin / 01-14 08:00 102 mg/dL / 01-14 08:10 meal 45 g',
    ],
    [
      'a summary below',
      `${H}${day('2026-01-14')}Average;142\nTotal rows: 500;\n`,
      'iuii / 01-14 08:00 102 mg/dL / note no-time',
    ],
    [
      'fewer cells and more cells',
      `Time;Glucose (mg/dL);Note\n2026-01-14 08:00;102\n2026-01-14 08:05;103;a;b\n`,
      'ius / 01-14 08:00 102 mg/dL / warning row-too-long',
    ],
    [
      'two columns of one name that agree',
      'Time;Glucose (mg/dL);Glucose (mg/dL)\n2026-01-14 08:00;102;102\n2026-01-14 08:05;103;103\n',
      'iuu / 01-14 08:00 102 mg/dL / 01-14 08:05 103 mg/dL',
    ],
    [
      'two columns of one name that differ',
      'Time;Glucose (mg/dL);Glucose (mg/dL)\n2026-01-14 08:00;102;150\n2026-01-14 08:05;103;151\n',
      'iss / refusal two-value-columns',
    ],
    [
      'byte-order mark and invisible letters',
      `\ufeffTime;\u200bGlucose (mg/dL)\n\u00a02026-01-14 08:00\u00a0;102\u200b\n`,
      'iu / 01-14 08:00 102 mg/dL',
    ],
    ['UTF-16', utf16(`${H}${day('2026-01-14')}`), 'iu / 01-14 08:00 102 mg/dL'],
    [
      'text like a formula',
      'Time;Glucose (mg/dL);Note\n2026-01-14 08:00;102;=1+1\n2026-01-14 08:01;;=1+1\n',
      'iun / 01-14 08:00 102 mg/dL / 01-14 08:00 text "=1+1" / 01-14 08:01 text "=1+1"',
    ],
    ['text marked by an apostrophe', `${H}'2026-01-14 08:00;'102\n`, 'iu / 01-14 08:00 102 mg/dL'],
    ['nothing', '', 'warning file-empty'],
    ['names only', H, 'i / warning no-rows'],
    ['one row', `${H}${day('2026-01-14')}`, 'iu / 01-14 08:00 102 mg/dL'],
  ],
  values: [
    [
      'unit column, one of them unknown',
      'Time;Glucose;Unit\n2026-01-14 08:00;102;mg/dL\n2026-01-14 08:05;5.6;mmol/L\n2026-01-14 08:10;5.6;stone\n',
      'iuus / 01-14 08:00 102 mg/dL / 01-14 08:05 5.6 mmol/L / warning value-unit-unknown',
    ],
    [
      'no unit: decimals',
      `Time;Glucose\n${run(12, (i) => `${at(i)};${(4 + i * 0.3).toFixed(1)}`)}`,
      '12: 01-14 08:00 4 mmol/L … 01-14 08:55 7.3 mmol/L',
    ],
    [
      'no unit: whole numbers',
      `Time;Glucose\n${run(12, (i) => `${at(i)};${90 + i}`)}`,
      '12: 01-14 08:00 90 mg/dL … 01-14 08:55 101 mg/dL',
    ],
    ['no unit: either', `Time;Glucose\n${run(12, (i) => `${at(i)};${20 + i}`)}`, 'refusal unit-unclear'],
    [
      'columns parted equally well by two marks',
      `x;y,z\n${run(12, (i) => `${i};${i + 1},${i + 2}`)}`,
      'refusal delimiter-unclear',
    ],
    [
      'the unit changes half-way',
      `Time;Glucose\n${run(12, (i) => `${at(i)};${i < 6 ? 120 + i : 5.5 + i / 10}`)}`,
      'refusal unit-changes',
    ],
    [
      'below and above in words',
      `${H}${day('2026-01-14', '08:00', 'LOW')}${day('2026-01-14', '08:05', '>400')}${day('2026-01-14', '08:10', '< 40')}${day('2026-01-14', '08:15', '≤40')}`,
      'iuuuu / 01-14 08:00 <? mg/dL / 01-14 08:05 >400 mg/dL / 01-14 08:10 <40 mg/dL / 01-14 08:15 <40 mg/dL / note limit-unknown',
    ],
    [
      'a word of no language here',
      `${H}${day('2026-01-14', '08:00', 'gribble')}${day('2026-01-14', '08:05')}`,
      'isu / 01-14 08:05 102 mg/dL / warning value-not-a-number',
    ],
    [
      'no value in many spellings',
      `${H}${run(8, (i) => `${at(i)};${['', '-', '--', 'NA', 'N/A', 'null', '#N/A', '---'][i]}`)}\n${day('2026-01-14', '09:00')}`,
      'issssssssu / 01-14 09:00 102 mg/dL / note no-value',
    ],
    [
      'codes for no reading',
      `${H}${run(6, (i) => `${at(i)};${[0, 1, 2047, 65535, 9999, -1][i]}`)}\n${day('2026-01-14', '09:00')}`,
      'issssssu / 01-14 09:00 102 mg/dL / warning sentinel-value / warning value-impossible',
    ],
    [
      'just beyond the range of the others',
      `${H}${run(4, (i) => `${at(i)};${[39, 40, 400, 401][i]}`)}`,
      'iuuuu / 01-14 08:00 39 mg/dL / 01-14 08:05 40 mg/dL / 01-14 08:10 400 mg/dL / 01-14 08:15 401 mg/dL / note at-sensor-limit',
    ],
    ['unit in the cell', `Time;Glucose\n${day('2026-01-14', '08:00', '5.6 mmol/L')}`, 'iu / 01-14 08:00 5.6 mmol/L'],
    ['scientific', `${H}${day('2026-01-14', '08:00', '1.12E+02')}`, 'iu / 01-14 08:00 112 mg/dL'],
    [
      'a value a spreadsheet turned into a date',
      `${H}${day('2026-01-14', '08:00', '5/6')}${day('2026-01-14', '08:05', '05-Jun')}${day('2026-01-14', '08:10')}`,
      'issu / 01-14 08:10 102 mg/dL / warning value-turned-date',
    ],
    [
      'no numbers of glucose',
      `${H}${run(6, (i) => `${at(i)};${['-102', 'NaN', 'Infinity', '0x41', '1e999', '12 34'][i]}`)}\n${day('2026-01-14', '09:00')}`,
      'issssssu / 01-14 09:00 102 mg/dL / warning value-impossible / note no-value / warning value-not-a-number',
    ],
    [
      'sensor and finger stick in one row',
      'Time;Sensor glucose (mg/dL);Finger stick (mg/dL)\n2026-01-14 08:00;102;109\n2026-01-14 08:05;103;\n',
      'iuu / 01-14 08:00 102 mg/dL / 01-14 08:05 103 mg/dL / 01-14 08:00 fingerstick 109 mg/dL',
    ],
  ],
  dates: [
    [
      'one first number over 12',
      `${H}${day('03/04/2026')}${day('14/04/2026')}`,
      'iuu / 04-03 08:00 102 mg/dL / 04-14 08:00 102 mg/dL',
    ],
    [
      'one second number over 12',
      `${H}${day('03/04/2026')}${day('04/14/2026')}`,
      'iuu / 03-04 08:00 102 mg/dL / 04-14 08:00 102 mg/dL',
    ],
    ['both in one column', `${H}${day('14/04/2026')}${day('04/14/2026')}`, 'iss / refusal date-order-mixed'],
    [
      'days that follow each other under one order only',
      `${H}${run(36, (i) => `0${3 + Math.floor(i / 6)}/04/2026 0${i % 6}:00;102`)}\n`,
      '36: 04-03 00:00 102 mg/dL … 04-08 05:00 102 mg/dL',
    ],
    ['nothing tells', `${H}${day('03/04/2026')}`, 'is / refusal date-order-unclear'],
    ['the same day either way', `${H}${day('05/05/2026')}`, 'iu / 05-05 08:00 102 mg/dL'],
    [
      'two tables in two orders',
      `${H}${day('14/04/2026')}${H}${day('04/15/2026')}`,
      'iuiu / 04-14 08:00 102 mg/dL / 04-15 08:00 102 mg/dL / note date-orders-differ',
    ],
    ['year of two digits', `${H}${day('26/01/25')}`, 'is / refusal date-order-unclear'],
    [
      'month names',
      `${H}${day('14 Mar 2026')}${day('15. März 2026')}${day('16 mars 2026')}${day('17 Mai 2026')}`,
      'innnn / 03-14 08:00 fingerstick 102 mg/dL / 03-15 08:00 fingerstick 102 mg/dL / 03-16 08:00 fingerstick 102 mg/dL / 05-17 08:00 fingerstick 102 mg/dL / warning sparse-glucose',
    ],
    [
      'days that do not exist',
      `${H}${day('31.06.2026')}${day('29.02.2025')}${day('14.04.2026', '56:35')}${day('14.04.2026')}`,
      'isssu / 04-14 08:00 102 mg/dL / warning date-impossible',
    ],
    [
      'date and time in two columns, the date once',
      'Date;Clock;Glucose (mg/dL)\n2026-01-14;08:00;102\n;08:05;103\n',
      'iuu / 01-14 08:00 102 mg/dL / 01-14 08:05 103 mg/dL',
    ],
    [
      'day numbers of a spreadsheet',
      `${H}46027.5;102\n46027.53125;103\n`,
      'iuu / 01-05 12:00 102 mg/dL / 01-05 12:45 103 mg/dL',
    ],
    ['epoch seconds', `${H}1768377600;102\n`, 'iu / 01-14 08:00 +0 102 mg/dL'],
    ['epoch milliseconds', `${H}1768377600000;102\n`, 'iu / 01-14 08:00 +0 102 mg/dL'],
    [
      'a date after today',
      `${H}${day('2204-01-14')}${day('2026-01-14')}`,
      'isu / 01-14 08:00 102 mg/dL / warning date-in-future',
    ],
    [
      'a clock that was never set',
      `${H}${day('1970-01-01')}${day('2000-01-01')}${day('2026-01-14')}`,
      'issu / 01-14 08:00 102 mg/dL / warning clock-not-set',
    ],
  ],
  clock: [
    [
      'noon and midnight with halves',
      `${H}${day('2026-01-14', '12:05 AM')}${day('2026-01-14', '12:05 PM')}`,
      'iuu / 01-14 00:05 102 mg/dL / 01-14 12:05 102 mg/dL',
    ],
    [
      '24 hours with a half',
      `${H}${day('2026-01-14', '14:05 PM')}${day('2026-01-14', '00:05 PM')}`,
      'ius / 01-14 14:05 102 mg/dL / note half-not-needed / warning date-impossible',
    ],
    [
      '7:5 and 7h05',
      `${H}${day('2026-01-14', '7:5')}${day('2026-01-14', '7h10')}`,
      'iuu / 01-14 07:05 102 mg/dL / 01-14 07:10 102 mg/dL',
    ],
    ['second 60', `${H}${day('2026-01-14', '12:00:60')}`, 'iu / 01-14 12:00:59 102 mg/dL / note second-60'],
    ['24:00', `${H}${day('2026-01-14', '24:00')}`, 'iu / 01-15 00:00 102 mg/dL'],
    [
      'a length is no clock',
      'Time;Glucose (mg/dL);Duration\n2026-01-14 08:00;102;00:45\n',
      'iu / 01-14 08:00 102 mg/dL / 01-14 08:00 text "Duration: 00:45"',
    ],
  ],
  'order and zones': [
    [
      'newest first',
      `${H}${day('2026-01-14', '08:05')}${day('2026-01-14', '08:00')}`,
      'iuu / 01-14 08:05 102 mg/dL / 01-14 08:00 102 mg/dL',
    ],
    ['the same offset everywhere', `${H}2026-01-14T08:00:00+02:00;102\n`, 'iu / 01-14 08:00 +120 102 mg/dL'],
    [
      'some with an offset, some without',
      `${H}2026-01-14T08:00:00+02:00;102\n2026-01-14T08:05:00;103\n`,
      'iss / refusal offsets-mixed',
    ],
    [
      'a zone named above the table',
      `Zone;Europe/Helsinki\n${H}${day('2026-01-14')}`,
      'iiu / 01-14 08:00 102 mg/dL / note lines-above-table',
    ],
    [
      'an offset and its zone in brackets',
      `${H}2026-01-14T08:00:00+02:00[Europe/Helsinki];102\n`,
      'iu / 01-14 08:00 +120 102 mg/dL',
    ],
  ],
  notes: [
    [
      'a sum of doses and words stay words',
      'Time;Insulin (IU);Carbs (g)\n2026-01-14 08:00;6+2;half\n2026-01-14 08:05;5;45\n',
      'inn / 01-14 08:00 meal "half" / 01-14 08:00 insulin "6+2" / 01-14 08:05 meal 45 g / 01-14 08:05 insulin 5 IU',
    ],
    [
      'an amount without a unit',
      'Time;Carbs;Glucose (mg/dL)\n2026-01-14 08:00;45;102\n',
      'iu / 01-14 08:00 102 mg/dL / 01-14 08:00 meal 45 / note unit-not-written',
    ],
    [
      'a unit that JavaScript knows as something else',
      'Time;Insulin;Carbs (constructor);Exercise;Duration\n2026-01-14 08:00;5 constructor;45;;\n2026-01-14 08:05;;;run;30 __proto__\n',
      'inn / 01-14 08:00 meal 45 / 01-14 08:00 insulin "5 constructor" / 01-14 08:05 exercise [run] "30 __proto__" / note unit-not-written',
    ],
    [
      'a note with a date only',
      'Date;Note\n2026-01-14;felt fine\n2026-01-15;walked\n',
      'inn / 01-14 text "felt fine" / 01-15 text "walked"',
    ],
    [
      'midnight on every note',
      'Time;Note\n2026-01-14 00:00;a\n2026-01-15 00:00;b\n2026-01-16 00:00;c\n',
      'innn / 01-14 text "a" / 01-15 text "b" / 01-16 text "c"',
    ],
    [
      'several facts in one cell',
      'Time;Note\n2026-01-14 08:00;45 g and 4 units\n2026-01-14 09:00;x\n',
      'inn / 01-14 08:00 text "45 g and 4 units" / 01-14 09:00 text "x"',
    ],
  ],
};

describe.each(Object.entries(traps))('%s', (_, table) => {
  test.each(table)('%s', (__, file, outcome, settings) => {
    expect(outcomeOf(file, settings)).toBe(outcome);
  });
});
