import type { Ledger } from '../model/input.ts';
import type { Block, Cell } from '../model/report.ts';
import { count, denseTable, heading, type PageContext, type PageMaker, paragraph, word } from './context.ts';
import { evidenceText, shownText, valueText } from './understoodTexts.ts';

/** So many single issues fit; the rest stand in set-aside.csv and analysis.json. */
const ISSUES_SHOWN = 14;

/** Every row that came in, where it went, and how each file was understood. */
export const accounting: PageMaker = (context) => {
  const { say, analysis } = context;
  return {
    id: 'left-out',
    title: say.say('pages.accounting.title'),
    blocks: [
      heading(1, say.say('pages.accounting.title')),
      paragraph(say.say('pages.accounting.sum', ledgerParams(analysis.ledger))),
      ledgerTable(context),
      paragraph(
        say.say('pages.accounting.period', {
          inPeriod: count(analysis.timeline.readings.count),
          by: word(analysis.timeline.chosenBy),
        }),
      ),
      ...issues(context),
      heading(2, say.say('pages.accounting.choices')),
      choices(context),
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

function ledgerTable({ say, analysis }: PageContext): Block {
  const columns = ['rows', 'used', 'notes', 'duplicate', 'setAside', 'ignored'] as const;
  const row = (name: string, ledger: Ledger, strong: boolean): Cell[] => [
    { text: name, strong },
    ...columns.map((column) => ({ text: say.number(ledger[column], 0), strong })),
  ];
  const rows = analysis.files.map((file) => row(file.name, file.ledger, false));
  if (rows.length > 1) rows.push(row(say.say('pages.accounting.total'), analysis.ledger, true));
  return denseTable(
    say.say('pages.accounting.tableCaption'),
    [
      { title: say.say('pages.accounting.file'), align: 'start', width: 0.34 },
      ...columns.map((column) => ({
        title: say.say(`pages.accounting.columns.${column}`),
        align: 'end' as const,
        width: 0.11,
      })),
    ],
    rows,
  );
}

function issues({ say, analysis }: PageContext): Block[] {
  if (analysis.issues.length === 0) return [];
  const shown = analysis.issues.slice(0, ISSUES_SHOWN);
  const items = shown.map((issue) => {
    const text = say.say(`issues.${issue.code}`, {
      file: word(issue.origin?.file ?? ''),
      line: word(String(issue.origin?.line ?? '')),
      actual: word(shownText(say, issue.code, issue.actual)),
      expected: word(shownText(say, issue.code, issue.expected)),
      option: word(issue.option ?? ''),
      count: count(issue.count ?? 1),
    });
    return issue.origin && issue.origin.line > 0 && !text.includes(issue.origin.file)
      ? say.say('pages.accounting.at', {
          file: word(issue.origin.file),
          line: word(String(issue.origin.line)),
          text: word(text),
        })
      : text;
  });
  const rest = analysis.issues.length - shown.length;
  if (rest > 0) items.push(say.say('pages.accounting.more', { count: count(rest) }));
  return [heading(2, say.say('pages.accounting.issues')), { kind: 'list', items, ordered: false }];
}

function choices({ say, analysis }: PageContext): Block {
  const rows = analysis.files.flatMap((file) =>
    file.choices.map((choice): Cell[] => [
      { text: file.name },
      { text: say.has(`choices.${choice.id}`) ? say.say(`choices.${choice.id}`) : choice.id },
      { text: valueText(say, choice) },
      {
        text:
          choice.by === 'file' && !choice.evidence
            ? say.say('pages.accounting.by.fileAlone')
            : say.say(`pages.accounting.by.${choice.by}`, { evidence: word(evidenceText(say, choice)) }),
      },
    ]),
  );
  return denseTable(
    say.say('pages.accounting.choicesCaption'),
    [
      { title: say.say('pages.accounting.file'), align: 'start', width: 0.17 },
      { title: say.say('pages.accounting.choice'), align: 'start', width: 0.2 },
      { title: say.say('pages.accounting.value'), align: 'start', width: 0.33 },
      { title: say.say('pages.accounting.decided'), align: 'start', width: 0.3 },
    ],
    rows,
  );
}
