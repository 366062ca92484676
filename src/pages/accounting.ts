import { issueSaid } from '../language/index.ts';
import type { Ledger } from '../model/input.ts';
import type { Block, Cell } from '../model/report.ts';
import { basis } from './basis.ts';
import { columnsOf, count, denseTable, heading, type PageContext, type PageMaker, paragraph, word } from './context.ts';
import { evidenceText, valueText } from './understoodTexts.ts';

/** So many single issues fit; the rest stand in set-aside.csv and analysis.json. */
const ISSUES_SHOWN = 14;

/** Every row that came in, where it went, and how each file was understood. */
export const accounting: PageMaker = (context) => {
  const { speaker, analysis } = context;
  return {
    id: 'left-out',
    title: speaker.say('pages.accounting.title'),
    blocks: [
      heading(1, speaker.say('pages.accounting.title')),
      paragraph(speaker.say('pages.accounting.sum', ledgerParams(analysis.ledger))),
      ledgerTable(context),
      paragraph(
        speaker.say('pages.accounting.period', {
          inPeriod: count(analysis.timeline.readings.count),
          by: word(analysis.timeline.chosenBy),
        }),
      ),
      ...issues(context),
      heading(2, speaker.say('pages.accounting.choices')),
      choices(context),
      ...basis(context),
    ],
  };
};

const ledgerParams = (ledger: Ledger) => ({
  rows: count(ledger.rows),
  used: count(ledger.used),
  duplicate: count(ledger.duplicate),
  setAside: count(ledger.setAside),
  notes: count(ledger.notes),
  ignored: count(ledger.ignored),
});

function ledgerTable({ speaker, analysis }: PageContext): Block {
  const columns = ['rows', 'used', 'notes', 'duplicate', 'setAside', 'ignored'] as const;
  const row = (name: string, ledger: Ledger, strong: boolean): Cell[] => [
    { text: name, strong },
    ...columns.map((column) => ({ text: speaker.number(ledger[column], 0), strong })),
  ];
  const rows = analysis.files.map((file) => row(file.name, file.ledger, false));
  if (rows.length > 1) rows.push(row(speaker.say('pages.accounting.total'), analysis.ledger, true));
  return denseTable(
    speaker.say('pages.accounting.tableCaption'),
    columnsOf(
      (name: 'file' | (typeof columns)[number]) =>
        speaker.say(name === 'file' ? 'pages.accounting.file' : `pages.accounting.columns.${name}`),
      ['file', 0.34],
      ...columns.map((column) => [column, 0.11] as const),
    ),
    rows,
  );
}

function issues({ speaker, analysis }: PageContext): Block[] {
  if (analysis.issues.length === 0) return [];
  const shown = analysis.issues.slice(0, ISSUES_SHOWN);
  const items = shown.map((issue) => {
    const text = speaker.repeat(issueSaid(issue));
    return issue.origin && issue.origin.line > 0 && !text.includes(issue.origin.file)
      ? speaker.say('pages.accounting.at', {
          file: word(issue.origin.file),
          line: word(String(issue.origin.line)),
          text: word(text),
        })
      : text;
  });
  const rest = analysis.issues.length - shown.length;
  if (rest > 0) items.push(speaker.say('pages.accounting.more', { count: count(rest) }));
  return [heading(2, speaker.say('pages.accounting.issues')), { kind: 'list', items, ordered: false }];
}

function choices({ speaker, analysis }: PageContext): Block {
  const rows = analysis.files.flatMap((file) =>
    file.choices.map((choice): Cell[] => [
      { text: file.name },
      { text: speaker.say(`choices.${choice.id}`) },
      { text: valueText(speaker, choice) },
      {
        text:
          choice.by === 'file' && !choice.evidence
            ? speaker.say('pages.accounting.by.fileAlone')
            : speaker.say(`pages.accounting.by.${choice.by}`, { evidence: word(evidenceText(speaker, choice)) }),
      },
    ]),
  );
  return denseTable(
    speaker.say('pages.accounting.choicesCaption'),
    columnsOf(
      (name: 'file' | 'choice' | 'value' | 'decided') => speaker.say(`pages.accounting.${name}`),
      ['file', 0.17],
      ['choice', 0.2, 'words'],
      ['value', 0.33, 'words'],
      ['decided', 0.3, 'words'],
    ),
    rows,
  );
}
