import type { Detail } from '../../model/detail.ts';
import type { Input, Issue } from '../../model/input.ts';
import type { LayoutField, Question } from '../../model/question.ts';
import { issueMessage, type Teller } from '../../papers/teller.ts';
import { zoneNames } from '../../time/zone.ts';
import { MGDL_PER_MMOL } from '../../units.ts';
import type { Asked, Meant, Reading } from '../messages.ts';
import { cellsOf, headOf, linesIn, rowsAround, seenIn } from './rows.ts';
import { withoutOptions } from './said.ts';

/** Of a file's own words: inputs as they were read, and their own names where the results call them otherwise. */
export interface Source {
  inputs: readonly Input[];
  /** Where a unit that somebody said stands: in a layout, which wins, or in settings. */
  unitIn: 'layout' | 'settings';
  own(text: string): string;
}

/** Every question that the files leave open, once each, with what can be answered. No answer stands first. */
export function questionsIn(tell: Teller, issues: readonly Issue[], source: Source): Asked[] {
  const asked = new Map<string, Asked>();
  for (const { issue, question } of [...asking(issues), ...saidWrongly(issues, source)]) {
    const { origin } = issue;
    const file = origin?.file ?? '';
    const field = question.of === 'layout' ? question.field : '';
    const id = `${question.of}-${field}-${issue.code}-${file}`;
    if (asked.has(id)) continue;
    const lines = linesIn(source.inputs, file);
    asked.set(id, {
      ...{ id, of: question.of, field, file: source.own(file) },
      text: source.own(withoutOptions(issueMessage(tell, issue))),
      readings: readingsOf(tell, issue, question, lines),
      names: namesOf(tell, issue, question, lines),
      rows: question.of === 'period' || question.of === 'losses' ? [] : rowsAround(lines, origin?.line ?? 0),
      suggestions: question.of === 'zone' ? zoneNames() : [],
    });
  }
  return [...asked.values()];
}

interface Asking {
  issue: Issue;
  question: Question;
}

const asking = (issues: readonly Issue[]): Asking[] =>
  issues.flatMap((issue) =>
    issue.level === 'refusal' && issue.question !== undefined ? [{ issue, question: issue.question }] : [],
  );

/** Where nothing can be read in the unit that somebody said, no file asks for it: their own word is asked for once more. */
function saidWrongly(issues: readonly Issue[], { unitIn }: Source): Asking[] {
  if (!issues.some(({ code }) => code === 'no-readings')) return [];
  const question: Question = unitIn === 'layout' ? { of: 'layout', field: 'unit' } : { of: 'unit' };
  return issues.filter(({ code }) => code === 'unit-contradicts-user').map((issue) => ({ issue, question }));
}

const details = ({ actual, expected }: Issue): Detail[] =>
  [actual, expected].flat().filter((one): one is Detail => typeof one === 'object' && one !== null);

function readingsOf(tell: Teller, issue: Issue, question: Question, lines: string[]): Reading[] {
  switch (question.of) {
    case 'unit':
      return units(tell, issue);
    case 'day-order':
      return dayOrders(tell, issue);
    case 'losses':
      return [{ value: question.file, label: tell.say('screen.answers.accept'), shows: [] }];
    case 'layout':
      return ofLayout(tell, issue, question.field, lines);
    default:
      return [];
  }
}

/** Both readings of a number that stands in the file. */
function units({ speaker }: Teller, issue: Issue): Reading[] {
  const one = details(issue).find((each) => 'value' in each || 'low' in each);
  const value = one && ('value' in one ? one.value : 'low' in one ? one.low : undefined);
  const shown = (number: number, decimals: number): string => speaker.number(number, decimals);
  const native = typeof value === 'number' ? shown(value, Number.isInteger(value) ? 0 : 1) : '';
  const shows = (line: (value: number) => string): string[] => (typeof value === 'number' ? [line(value)] : []);
  return [
    {
      ...{ value: 'mg/dL', label: 'mg/dL' },
      shows: shows((number) => `${native} mg/dL = ${shown(number / MGDL_PER_MMOL, 1)} mmol/L`),
    },
    {
      ...{ value: 'mmol/L', label: 'mmol/L' },
      shows: shows((number) => `${native} mmol/L = ${shown(number * MGDL_PER_MMOL, 0)} mg/dL`),
    },
  ];
}

function dayOrders(tell: Teller, issue: Issue): Reading[] {
  return (['day-first', 'month-first', 'year-first'] as const).flatMap((order) => {
    const read = details(issue).filter((one) => one.is === 'date-read' && one.order === order);
    const shows = read.map((value) => tell.speaker.value({ q: 'shown', value }));
    // Where the file shows two, the third is none of its.
    const others = details(issue).some(({ is }) => is === 'date-read');
    return others && shows.length === 0 ? [] : [{ value: order, label: tell.say(`understood.${order}`), shows }];
  });
}

const DELIMITERS = { ',': 'comma', ';': 'semicolon', '\t': 'tabulator', '|': 'bar' } as const;

function ofLayout(tell: Teller, issue: Issue, field: LayoutField, lines: string[]): Reading[] {
  const say = (answer: 'bySize' | 'confirmed' | 'wholeDay' | 'point' | 'decimalComma'): string =>
    tell.say(`screen.answers.${answer}`);
  const head = lines.slice(headOf(lines).at).slice(0, 2);
  switch (field) {
    case 'unit':
      // A person may also have looked, and say that the readings are what they seem not to be.
      return issue.code === 'series-other-unit'
        ? [...units(tell, issue), { value: 'confirmed', label: say('confirmed'), shows: [] }]
        : units(tell, issue);
    case 'units':
      return [{ value: 'by-size', label: say('bySize'), shows: shown(tell, issue) }];
    case 'series':
      return [{ value: 'confirmed', label: say('confirmed'), shows: shown(tell, issue) }];
    case 'clock':
      return [{ value: '24-hour', label: say('wholeDay'), shows: shown(tell, issue) }];
    case 'serialDates':
      return (['1900', '1904'] as const).map((value) => ({
        ...{ value, label: value },
        shows: details(issue)
          .filter((one) => one.is === 'serial-read' && String(one.year) === value)
          .map((one) => tell.speaker.value({ q: 'shown', value: one })),
      }));
    case 'decimalMark':
      return [
        { value: '.', label: say('point'), shows: [] },
        { value: ',', label: say('decimalComma'), shows: [] },
      ];
    case 'delimiter':
      return Object.entries(DELIMITERS).map(([value, name]) => ({
        ...{ value, label: tell.say(`screen.answers.${name}`) },
        shows: head.map((line) => cellsOf(line, value).join(' ▏ ')),
      }));
    default:
      return [];
  }
}

const shown = ({ speaker }: Teller, issue: Issue): string[] =>
  details(issue).map((value) => speaker.value({ q: 'shown', value }));

/** Names of the file that want a meaning each. */
function namesOf(tell: Teller, issue: Issue, question: Question, lines: string[]): Meant[] {
  if (question.of !== 'layout') return [];
  const { field, answer } = question;
  if (field === 'columns') {
    const { at, sign } = headOf(lines);
    return cellsOf(lines[at] ?? '', sign).map((name, i) => ({
      ...{ name: `#${i + 1}`, role: '' },
      seen: [name, seenIn(lines, `#${i + 1}`)].filter((text) => text !== '').join(': '),
    }));
  }
  if (answer === undefined || (field !== 'meanings' && field !== 'kinds')) return [];
  const example = (JSON.parse(answer) as Record<string, Record<string, string>>)[field] ?? {};
  return Object.entries(example).map(([name, role]) => {
    const group = details(issue).find((one) => 'word' in one && one.word.startsWith(name));
    const seen = group ? tell.speaker.value({ q: 'shown', value: group }) : seenIn(lines, name);
    // Words that are known already are known; an example is only one.
    return { name, seen, role: field === 'kinds' && role !== '…' ? role : '' };
  });
}
