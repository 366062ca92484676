import type { ReadFile } from '../model/input.ts';
import type { Issue } from '../model/issues.ts';
import type { Question } from '../model/question.ts';
import { type CheckedSettings, checkSettings } from './reading.ts';

/** One question hides another at most so often: clock, half of the day, order of dates, kinds, unit, two sensors (ours). */
const DEEPEST = 6;

/**
 * Asks at once all that a file leaves open. What stands behind a question is found by taking some answer to it for a
 * moment and reading again; nothing of that reading is kept but its questions. Now and then one would have fallen away
 * with another answer; that is less trouble than a third round.
 */
export function askOnward(
  file: ReadFile,
  settings: CheckedSettings,
  read: (settings: CheckedSettings) => ReadFile,
): void {
  const asked = new Set<string>();
  let given = settings;
  let last = file;
  for (let depth = 0; depth < DEEPEST; depth++) {
    let open = false;
    for (const issue of last.issues) {
      const question = questionOf(issue);
      const key = JSON.stringify(issue);
      const answered = question && answerFor(issue, question, given);
      if (!answered || asked.has(key)) continue;
      asked.add(key);
      open = true;
      given = answered;
      if (last !== file) file.issues.push(issue);
    }
    if (!open) return;
    last = read(given);
  }
}

function questionOf(issue: Issue): Question | undefined {
  return issue.level === 'refusal' && 'question' in issue ? issue.question : undefined;
}

/** Settings with some answer to a question; undefined where none can be supposed. */
function answerFor(issue: Issue, question: Question, settings: CheckedSettings): CheckedSettings | undefined {
  if (question.of === 'day-order') return { ...settings, dateOrder: question.answer };
  if (question.of === 'unit') return question.answer && { ...settings, unit: question.answer };
  if (question.of === 'zone') return { ...settings, zone: 'UTC' };
  // What stands behind a delimiter that may be another one is no question yet.
  if (question.of !== 'layout' || question.field === 'delimiter') return undefined;
  const laid: Record<string, unknown> = { ...settings.layout };
  const usual = SUPPOSED[question.field];
  const supposed = usual ?? (question.answer ? filled(question.answer, mostRows(issue)) : undefined);
  if (!supposed) return undefined;
  for (const [field, value] of Object.entries(supposed))
    laid[field] = value instanceof Object ? { ...(laid[field] as object | undefined), ...value } : value;
  return checkSettings({ ...settings, layout: laid });
}

/** Answers to questions that propose none, or leave it to be filled in. */
const SUPPOSED: Partial<Record<string, Record<string, unknown>>> = {
  clock: { clock: '24-hour' },
  serialDates: { serialDates: 1900 },
  unit: { unit: 'mg/dL' },
  start: { start: '2020-01-01 00:00' },
  year: { year: 2020 },
};

/** The word with the most rows, where words are asked for. */
function mostRows(issue: Issue): string | undefined {
  return issue.code === 'kinds-unknown' || issue.code === 'column-parts-values' ? issue.actual[0]?.word : undefined;
}

/** A proposed layout. Of words to be explained the most frequent is a sensor's where no other is; the rest are left aside. */
function filled(answer: string, frequent: string | undefined): Record<string, unknown> {
  const sensor = answer.includes('"sensor"');
  return JSON.parse(answer, (word, value: unknown) =>
    value !== '…' ? value : word === frequent && !sensor ? 'sensor' : 'ignore',
  );
}
