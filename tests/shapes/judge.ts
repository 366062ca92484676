import { intake } from '../../src/analyse.ts';
import type { Input, Issue } from '../../src/model/input.ts';
import type { Settings } from '../../src/model/settings.ts';
import { openWorkbooks } from '../../src/readers/containers/workbook.ts';
import { type Difference, differences } from './compare.ts';
import { sheetName } from './render.ts';
import type { Written } from './write.ts';

export interface Verdict {
  /**
   * equal; refused where it must be, or with a question whose answer makes it equal; dead-end: refused and no answer the
   * program names helps; lossy: what is missing was told line by line; silent: a difference without a word.
   */
  is: 'equal' | 'refused' | 'dead-end' | 'lossy' | 'silent';
  /** Codes of the refusals, in the order they came. */
  asked: string[];
  /** Questions of the first run about one file, the most of any: how many a person meets before anything can be shown. */
  questions: number;
  differences: Difference[];
}

const TODAY = '2026-06-01';
/** So many answers are given before a file counts as one that cannot be read. */
const MOST_ANSWERS = 3;

/** Answers one question as somebody who knows the file; false when nothing is asked that can be answered. */
function answer(settings: Settings, { question, origin }: Issue, written: Written): boolean {
  const { answers } = written;
  const before = JSON.stringify(settings);
  if (question?.of === 'unit') settings.unit = answers.unit;
  else if (question?.of === 'day-order' && answers.dateOrder) settings.dateOrder = answers.dateOrder;
  else if (question?.of === 'zone') settings.zone = written.zone;
  else if (question?.of === 'layout') {
    const asked = answers.layout(sheetName(origin?.file ?? 'log'), question.field);
    settings.layout = { ...(settings.layout as object | undefined), ...asked };
  }
  return JSON.stringify(settings) !== before;
}

const refusalsOf = (issues: Issue[]): Issue[] => issues.filter(({ level }) => level === 'refusal');

function mostOfOneFile(refusals: Issue[]): number {
  const ofFile = new Map<string | undefined, number>();
  for (const { origin } of refusals) ofFile.set(origin?.file, (ofFile.get(origin?.file) ?? 0) + 1);
  return Math.max(0, ...ofFile.values());
}

/** Reads a written shape, answering what is asked, and compares. */
export async function judge(written: Written): Promise<Verdict> {
  const settings: Settings = { targets: 'adult', today: TODAY, person: {} };
  // Where the clocks change, only the name of the place tells when.
  if (written.change) settings.zone = written.zone;
  const inputs = await openWorkbooks(written.inputs.map((input): Input => ({ ...input })));
  const asked: string[] = [];
  let questions = 0;
  for (let turn = 0; turn <= MOST_ANSWERS; turn++) {
    const read = intake(inputs, settings);
    // Papers made without a file say so, and ask what they would of it alone.
    if (read.ok && read.missing.length > 0 && written.never.length === 0) {
      asked.push('file-left-out');
      if (written.final) return { is: 'refused', asked, questions, differences: [] };
      const open = read.issues.filter(({ question }) => question !== undefined);
      if (turn < MOST_ANSWERS && open.some((issue) => answer(settings, issue, written))) continue;
    }
    if (read.ok) {
      if (written.never.length > 0)
        return {
          is: 'silent',
          asked,
          questions,
          differences: [{ what: 'joined', said: false, detail: written.never.join() }],
        };
      const found = differences(written, read.timeline, read.setAside);
      if (written.mustAsk && asked.length === 0)
        found.push({ what: 'contradiction not asked', said: false, detail: 'the unit named cannot be' });
      if (found.length === 0) return { is: asked.length > 0 ? 'refused' : 'equal', asked, questions, differences: [] };
      return { is: found.every(({ said }) => said) ? 'lossy' : 'silent', asked, questions, differences: found };
    }
    const refusals = refusalsOf(read.issues);
    if (turn === 0) questions = mostOfOneFile(refusals);
    asked.push(...refusals.map(({ code }) => code).slice(0, 1));
    if (written.never.length > 0 || written.final) return { is: 'refused', asked, questions, differences: [] };
    // Where a refusal only says that nothing is left, the reasons before it name what helps.
    if (![...refusals, ...read.issues].some((issue) => answer(settings, issue, written))) break;
  }
  return { is: 'dead-end', asked, questions, differences: [] };
}
