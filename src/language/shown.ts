import type { DateOrder, Detail, Shown } from '../model/detail.ts';
import type { Question } from '../model/question.ts';
import type { Below, ParamsOf } from '../model/words.ts';
import { isolated } from './isolated.ts';
import type { Telling } from './telling.ts';

/** Numbers that name a place or a year: never grouped in thousands, as nobody looks for line 1,381. */
const NAMING = new Set(['line', 'year', 'serial']);

/** What was found or expected, in words: a text of a file as it stands, data by the words of `understood`. */
export function shownText(telling: Telling, shown: Shown): string {
  if (typeof shown === 'string') return isolated(shown);
  if (typeof shown === 'number') return number(telling, shown);
  if (!isList(shown)) return toldText(telling, shown);
  return shown.map((one) => shownText(telling, one)).join(shown.every((one) => typeof one === 'string') ? ', ' : '; ');
}

const isList = (shown: Shown): shown is readonly string[] | readonly Detail[] => Array.isArray(shown);

function toldText(telling: Telling, { is, ...data }: Detail): string {
  const texts: Record<string, string> = {};
  const choices: Record<string, number> = {};
  for (const [name, value] of Object.entries<string | number>(data)) {
    if (typeof value === 'number') {
      choices[name] = value;
      texts[name] = NAMING.has(name) ? String(value) : number(telling, value);
    } else if (name === 'order') texts[name] = telling.fill(`understood.${value as DateOrder}`, {});
    else if (name === 'role') texts[name] = telling.fill(`understood.roles.${value as Below<'understood.roles'>}`, {});
    else texts[name] = isolated(value);
  }
  // tests/language/issues.test.ts: no form lacks what its words ask for.
  return telling.fill(`understood.${is}`, texts as ParamsOf<`understood.${Detail['is']}`, string>, choices);
}

/** With the decimals it has: nothing here is worked out, all of it stood in a file. */
const number = ({ forms }: Telling, value: number): string =>
  forms.number(value, String(value).split('.')[1]?.length ?? 0);

/** The option of a command that answers a question. Names of options are no words of a language. */
export function optionText(question: Question): string {
  switch (question.of) {
    case 'unit':
      return question.answer === undefined ? '--unit' : `--unit ${question.answer}`;
    case 'day-order':
      return `--date-order ${question.answer}`;
    case 'zone':
      return '--zone';
    case 'period':
      return question.by === 'days' ? '--days' : '--from --to';
    case 'losses':
      return `--accept-losses ${/[^\w/.-]/.test(question.file) ? JSON.stringify(question.file) : question.file}`;
    case 'layout':
      return question.answer === undefined ? '--layout' : `--layout '${question.answer}'`;
  }
}
