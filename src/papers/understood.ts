import type { Choice, ColumnAccount } from '../model/input.ts';
import type { Below } from '../model/words.ts';
import { evidenceText, valueText } from '../pages/understoodTexts.ts';
import { printable, type Teller } from './teller.ts';

// How a file was understood, as rows of text for a terminal or a page to set.

const LONGEST = 40;

/** The ledger of columns: name, what each was taken for, and what told it or why it does no harm. */
export const columnRows = (tell: Teller, columns: readonly ColumnAccount[]): [string, string, string][] =>
  columns.map(({ name, role, why, evidence }, i) => {
    const reason = tell.say(`cli.told.columns.${why}`);
    return [
      printable(name === '' ? `#${i + 1}` : name).slice(0, LONGEST),
      role === 'ignore'
        ? tell.say('cli.told.columns.unused')
        : tell.say(`understood.roles.${role as Below<'understood.roles'>}`),
      evidence === undefined || evidence === ''
        ? reason
        : tell.say('cli.told.columns.seen', { reason: { sentence: reason }, evidence: evidence.slice(0, LONGEST) }),
    ];
  });

/** Each choice: of what, what was chosen, who chose it and what told it. */
export const choiceRows = (tell: Teller, choices: readonly Choice[]): [string, string, string][] =>
  choices.map((choice) => {
    const who = tell.say(`cli.told.by.${choice.by}`);
    const evidence = evidenceText(tell.speaker, choice);
    return [
      tell.say(`choices.${choice.id}`),
      printable(valueText(tell.speaker, choice)),
      evidence === '' ? who : tell.say('cli.told.evidence', { by: who, evidence }),
    ];
  });
