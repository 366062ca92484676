import type { Agreed } from '../model/visits.ts';
import { type ReadAgreed, readAgreed } from '../schemas/agreed.ts';
import type { Teller } from './teller.ts';

/** Fields of the form in the order of the paper, each with the words that stand beside it there. */
const FIELDS = {
  goal: 'goals',
  step: 'step',
  helper: 'helper',
  nextVisit: 'next',
  sure: 'sure',
  question: 'question',
  remarks: 'remarks',
  interpretation: 'interpretation',
  by: 'by',
  on: 'on',
} as const satisfies Record<keyof Agreed, string>;

const NAMES = Object.keys(FIELDS) as (keyof Agreed)[];

/** An empty form of what was agreed, line by line. */
export const agreedLines = (said: Teller): string[] => [
  said.plain('pages.agreed.form'),
  ...NAMES.map((name) => `${said.plain(`pages.agreed.${FIELDS[name]}`)}: `),
];

/** What was agreed, from the text of a form in any of the languages, or JSON. */
export function agreedFrom(text: string, languages: readonly Teller[]): ReadAgreed {
  const labels = (name: keyof Agreed) => languages.map((each) => each.plain(`pages.agreed.${FIELDS[name]}`));
  return readAgreed(text, {
    goal: labels('goal'),
    step: labels('step'),
    helper: labels('helper'),
    nextVisit: labels('nextVisit'),
    sure: labels('sure'),
    question: labels('question'),
    remarks: labels('remarks'),
    interpretation: labels('interpretation'),
    by: labels('by'),
    on: labels('on'),
  });
}
