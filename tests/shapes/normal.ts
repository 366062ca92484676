import { changesClock } from './clockChange.ts';
import { hasOwnDigits } from './numbers.ts';
import { isOpenFormat } from './openRecords.ts';
import { isByHand, isRecords, isSheet, isTwoFiles, isUnitWrong, type Shape } from './shape.ts';
import { TIME_FORMS } from './timeForms.ts';

const FIXED_TIME: Record<string, string[]> = {
  'hours-to-24': ['two-iso', 'iso'],
  'half-lost': ['mdy-half', 'two-mdy-half'],
  'order-turns': ['dmy-dot', 'dmy-slash', 'two-dmy', 'mdy-slash'],
  'order-flipped': ['dmy-slash', 'mdy-slash', 'two-dmy'],
  'odd-date': ['dmy-dot', 'two-dmy', 'dmy-slash', 'dmy-loose'],
};

/** Defects that are a matter of single cells and lines, in any table. */
const PLAIN_DEFECTS = ['none', 'no-value-words', 'zero', 'sentinel', 'no-last-line-end'];
const FHIR_DEFECTS = ['none', 'no-value-words', 'sentinel', 'clock-reset'];
/** Defects of single values. */
const RECORD_DEFECTS = [
  ...['none', 'no-value-words', 'zero', 'sentinel', 'quoted-thousand', 'value-turned-date', 'contradiction', 'repeats'],
  ...['order-turns', 'order-flipped', 'hours-to-24', 'half-lost', 'odd-date', 'unit-turns', 'odd-decimal'],
];
const ONLY_TEXT = [
  ...['many-columns', 'other-delimiter', 'formula-text', 'no-last-line-end', 'apostrophe', 'line-break', 'stray-quote'],
  ...['padded', 'mark-inside', 'comment-lines', 'row-too-long'],
];
/** Languages in which morning and afternoon are said beside a clock of twelve hours. */
const OWN_HALVES = ['en', 'es', 'el', 'tr', 'zh', 'ja', 'ko', 'ar', 'he', 'hu', 'sv'];
/** Where the unit can stand that a column of every amount names. */
const SHARED_UNIT = ['column', 'cell', 'preamble', 'nowhere', 'preamble-wrong', 'column-wrong'];
const OWN_WORLD = ['iso-Z', 'seconds', 'millis'];

/** How times stand where people set a text by hand. */
const HAND_TIME: Record<string, string[]> = {
  blanks: ['iso', 'two-iso', 'two-dmy', 'dmy-dot', 'named-month'],
  'day-headings': ['two-iso', 'two-dmy'],
  counted: ['iso'],
  yearless: ['dmy-dot', 'two-dmy', 'named-month', 'dmy-slash', 'named-month-own'],
  'days-across': ['two-iso', 'two-dmy'],
};

/** The nearest shape that can be: what cannot stand together gives way, always in the same order. */
export function normal(given: Shape): Shape {
  const s = { ...given };
  const from = (list: string[], value: string): string => (list.includes(value) ? value : list[s.seed % list.length]!);
  if (isOpenFormat(s)) {
    s.time = 'iso-offset';
    s.unitAt = 'header';
    s.number = 'plain';
    s.notes = from(['none', 'columns', 'columns-zeros'], s.notes);
    s.second = from(['none', 'finger'], s.second);
    s.decoy = from(['none', 'pulse', 'ketones', 'cholesterol', 'target'], s.decoy);
    s.person = from(['none', 'user', 'two-column'], s.person);
    s.limits = s.container.startsWith('fhir') ? from(['none', 'sign', 'words'], s.limits) : 'none';
    s.secondClock = s.footer = s.preamble = 'none';
    s.header = 'plain';
    s.encoding = 'utf-8';
    s.delimiter = ',';
    s.lineEnd = '\n';
    s.quoting = 'needed';
    if (s.series === 'real-long') s.series = 'real-mg';
    if (s.container.startsWith('fhir') && s.recordForm === 'interval') s.recordForm = 'single';
    s.defect = s.container.startsWith('fhir') && s.recordForm !== 'series' ? from(FHIR_DEFECTS, s.defect) : 'none';
    if (s.recordForm === 'series' && s.series.startsWith('real')) s.series = 'calm';
    return s;
  }
  s.recordForm = 'single';
  if (isByHand(s)) {
    s.time = from(HAND_TIME[s.container]!, s.time);
    s.defect = s.secondClock = s.second = s.footer = 'none';
    s.header = 'plain';
    s.quoting = 'needed';
    s.person = from(['none', 'above'], s.person);
    s.preamble = from(['none', 'title', 'title-blank'], s.preamble);
    s.notes = from(['none', 'columns', 'columns-zeros'], s.notes);
    s.decoy = from(['none', 'pulse', 'ketones', 'battery'], s.decoy);
    s.unitAt = from(['header', 'tail', 'cell', 'preamble', 'nowhere'], s.unitAt);
    if (s.number === 'own-digits') s.number = 'plain';
    if (changesClock(s.start)) s.start = 'late';
    if (s.container === 'counted') s.order = 'oldest-first';
    if (s.container === 'days-across') {
      s.series = 'quarter';
      s.notes = s.decoy = 'none';
      s.unitAt = from(['header', 'preamble'], s.unitAt);
      s.order = 'oldest-first';
    }
    if (s.container === 'blanks') {
      s.delimiter = ',';
      s.notes = 'none';
      s.limits = from(['none', 'sign', 'or-equal'], s.limits);
      s.preamble = from(['none', 'title', 'title-blank'], s.preamble);
    }
  }
  if (changesClock(s.start)) {
    if (s.container === 'wide') s.container = 'text';
    if (!PLAIN_DEFECTS.includes(s.defect)) s.defect = 'none';
    if (!['none', 'utc', 'serial'].includes(s.secondClock)) s.secondClock = 'utc';
    // One offset for all times is none that a clock has which changes.
    if (['offset-in-header', 'two-carried'].includes(s.time)) s.time = 'iso';
    if (s.person.startsWith('two-')) s.person = 'none';
    if (s.series.startsWith('real')) s.series = 'calm';
  }
  if (s.container === 'wide') {
    s.time = from(['two-bare', 'two-dmy'], s.time);
    s.notes = from(['none', 'own-file'], s.notes);
    s.defect = from(PLAIN_DEFECTS.slice(0, 1), s.defect);
    s.series = 'quarter';
    s.unitAt = from(['header', 'preamble'], s.unitAt);
    s.person = from(['none', 'above', 'record-above', 'birth-above', 'id-above'], s.person);
    s.order = 'oldest-first';
    s.header = 'plain';
    s.second = s.secondClock = s.decoy = s.footer = 'none';
  }
  if (!s.notes.startsWith('kind-')) s.vocabulary = 'own';
  if (s.notes === 'none') s.each = 'many';
  if (s.notes === 'kind-shared') {
    if (!SHARED_UNIT.includes(s.unitAt)) s.unitAt = from(['column', 'cell', 'preamble'], s.unitAt);
    s.second = 'none';
    if (s.defect === 'unit-turns-named') s.defect = 'unit-turns';
  }
  if (s.notes === 'kind-own' && s.header === 'absent') s.header = 'plain';
  if (s.header === 'absent') {
    s.unitAt = from(['nowhere', 'cell', 'preamble'], s.unitAt);
    s.notes = from(['none', 'own-file'], s.notes);
    s.person = from(['none', 'above', 'record-above', 'birth-above', 'id-above', 'two-files', 'two-ids'], s.person);
    s.second = 'none';
    if (
      [
        'mark-inside',
        'header-again',
        'header-twice-named',
        'empty-column',
        'many-columns',
        'unit-turns-named',
      ].includes(s.defect)
    )
      s.defect = 'none';
  }
  if (isTwoFiles(s)) {
    s.container = 'text';
    s.notes = from(['none', 'columns'], s.notes);
    s.second = from(['none', 'finger'], s.second);
    s.footer = 'none';
  }
  if (s.container === 'two-files') {
    if (s.notes === 'second-table') s.notes = 'columns';
    s.footer = 'none';
    if (['unit-turns', 'unit-turns-named', 'order-turns', 'order-flipped'].includes(s.defect)) s.container = 'text';
  }
  if (s.second === 'other-unit') {
    s.unitAt = from(['header', 'tail'], s.unitAt);
    if (s.number === 'long') s.number = 'plain';
  }
  if (s.notes !== 'none' && s.second === 'nameless-few' && s.notes === 'kind-own') s.second = 'none';
  if (s.unitAt === 'foreign' || s.unitAt === 'header-wrong') {
    s.limits = 'none';
    s.number = from(['plain', 'comma'], s.number);
    if (s.unitAt === 'foreign') s.number = 'plain';
  }
  if ((s.unitAt === 'foreign' || isUnitWrong(s)) && s.series === 'always-high') s.series = 'calm';
  if (s.unitAt === 'foreign' || isUnitWrong(s)) s.second = 'none';
  if (s.number === 'own-digits' && !hasOwnDigits(s.language)) s.number = 'plain';
  if (s.series === 'real-long' && s.unit === 'mg/dL' && s.number === 'plain') s.number = 'long';
  if (s.number === 'exponent' && (isSheet(s) || isRecords(s))) s.number = 'plain';
  if (isRecords(s)) {
    // A record has names and nothing above it, but for what an object says of all of its records.
    s.header = 'plain';
    s.preamble = s.footer = 'none';
    if (s.unitAt === 'row') s.unitAt = 'header';
    if (s.container !== 'records-in-object') {
      if (['preamble', 'preamble-wrong'].includes(s.unitAt)) s.unitAt = s.notes === 'kind-shared' ? 'column' : 'header';
      if (s.person.endsWith('above')) s.person = 'none';
    }
    if (s.notes === 'second-table') s.notes = 'columns';
    if (!RECORD_DEFECTS.includes(s.defect)) s.defect = 'none';
    // A number in JSON ends where its digits end.
    if (['thousandths', 'long'].includes(s.number)) s.number = 'plain';
    if (s.time === 'two-carried') s.time = 'two-iso';
  }
  if (isSheet(s) || isRecords(s)) {
    s.delimiter = ',';
    s.encoding = 'utf-8';
    s.lineEnd = '\n';
    s.quoting = 'needed';
    if (s.preamble === 'sep') s.preamble = 'title';
    if (ONLY_TEXT.includes(s.defect)) s.defect = 'none';
  }
  if (['old-workbook', 'open-sheet'].includes(s.container) && s.time.includes('serial')) s.time = 'serial';
  if (FIXED_TIME[s.defect]) s.time = from(FIXED_TIME[s.defect]!, s.time);
  if (['order-turns', 'order-flipped'].includes(s.defect) && s.start !== 'late' && s.start !== 'early')
    s.start = 'late';
  if (s.defect === 'order-flipped') s.start = 'early';
  const form = TIME_FORMS[s.time]!;
  if (s.time === 'two-carried') {
    s.order = 'oldest-first';
    s.notes = from(['none', 'columns', 'kind-shared'], s.notes);
    if (['cut-row', 'contradiction', 'repeats', 'clock-reset', 'future'].includes(s.defect)) s.defect = 'none';
    if (s.container === 'two-files' || isTwoFiles(s)) s.time = 'two-iso';
  }
  if (s.defect === 'future' && form.shortYear) s.defect = 'none';
  if (s.defect === 'clock-reset' && (form.shortYear || form.world || form.serial || s.time === 'named-month-short'))
    s.defect = 'none';
  if (s.defect === 'future' && s.time === 'named-month-short') s.defect = 'none';
  if (s.defect === 'formula-text' && s.quoting === 'needed') s.defect = 'none';
  if (s.defect === 'formula-text') s.quoting = 'needed';
  if (s.defect === 'half-lost' || s.defect === 'hours-to-24') {
    s.order = 'oldest-first';
    if (s.container === 'two-files') s.container = 'text';
    if (isTwoFiles(s)) s.person = 'none';
    s.notes = from(['none', 'columns'], s.notes);
  }
  if (['odd-decimal'].includes(s.defect)) {
    if (s.unit !== 'mmol/L') s.defect = 'none';
    if (!['plain', 'comma'].includes(s.number) || s.limits === 'words') s.number = 'plain';
  }
  if (s.defect === 'unit-turns') {
    s.unitAt = s.header === 'absent' ? 'nowhere' : 'nowhere';
    s.second = 'none';
  }
  if (s.defect === 'unit-turns-named') {
    s.unitAt = 'header';
    s.second = 'none';
    s.header = 'plain';
    if (s.language === 'ru') s.language = 'el';
  }
  if (s.defect === 'unit-turns' || s.defect === 'unit-turns-named') {
    s.number = 'plain';
    s.limits = 'none';
  }
  if (['line-break', 'stray-quote'].includes(s.defect) && s.notes === 'none') s.notes = 'columns';
  if (s.defect === 'many-columns' && s.notes === 'second-table') s.notes = 'columns';
  if (s.defect === 'quoted-thousand' && (s.number === 'comma' || s.unit !== 'mg/dL')) s.defect = 'none';
  if (s.secondClock === 'utc' && (form.world || form.offset)) s.secondClock = 'none';
  if (s.secondClock === 'nameless' && form.serial) s.secondClock = 'none';
  if (OWN_WORLD.includes(s.time) && s.notes === 'own-file') s.notes = 'columns';
  if (s.number === 'comma' && s.delimiter === ',' && s.preamble === 'sep') s.preamble = 'none';
  if (['half-before', 'two-half-before'].includes(s.time)) s.language = from(['zh', 'ja', 'ko', 'hu'], s.language);
  if (['named-month-own', 'year-named-own'].includes(s.time) && ['zh', 'ja', 'ko'].includes(s.language))
    s.language = 'hu';
  if (['dmy-half-own', 'three-half-own'].includes(s.time)) s.language = from(OWN_HALVES, s.language);
  if (s.time === 'year-signs') s.language = from(['zh', 'ja'], s.language);
  if (s.defect === 'contradiction' && s.second === 'other-unit') s.second = 'none';
  if (s.notes === 'kind-shared' && s.container === 'wide') s.notes = 'none';
  // A column that holds every amount names no unit of glucose.
  if (s.notes === 'kind-shared' && !SHARED_UNIT.includes(s.unitAt)) s.unitAt = 'column';
  if (s.notes === 'kind-shared' && s.defect === 'unit-turns-named') s.defect = 'none';
  // Notes in columns without names are nobody's to tell apart.
  if (s.header === 'absent' && !['none', 'own-file'].includes(s.notes)) s.notes = 'none';
  if (s.notes === 'none') s.each = 'many';
  // Which cells are times is told by the columns of the first table.
  if (isSheet(s) && s.time === 'serial' && s.notes === 'second-table') s.notes = 'columns';
  return s;
}
