import type { Speaker } from '../language/index.ts';
import type { Tier, WorklistLine } from '../model/clinic.ts';
import type { Block } from '../model/report.ts';
import { heading } from './context.ts';
import type { WorklistContent } from './worklist.ts';
import { type Column, glanceCell, isCompared, tableOf, upTo } from './worklistTables.ts';
import {
  briefReasons,
  hoursText,
  sinceText,
  tierName,
  topicText,
  visitText,
  withAgreed,
  withPoints,
} from './worklistTexts.ts';

/** So many people have a picture each on a screen. */
const PICTURED = 1000;

/**
 * On a screen one table of everybody, to be sorted as wanted. Code and reasons stand first: a small screen shows them
 * without moving sideways.
 */
export function wholeTable({ lines, order, tiers, linked }: WorklistContent, speaker: Speaker): Block[] {
  const caption = speaker.say(order === 'visit' ? 'pages.worklist.byVisit' : 'pages.worklist.everyone');
  // Ten thousand drawings make a page that no browser likes; the paper has them.
  const pictured = lines.length <= PICTURED;
  const glance: Column = {
    id: 'glance',
    width: 0.18,
    cell: (line) => glanceCell(speaker, line),
    // From the least time in range.
    key: ({ outcome }) => outcome.facts?.shares?.inRange ?? '',
  };
  const columns: Column[] = [
    {
      id: 'code',
      width: 0.15,
      cell: ({ outcome }) => ({ text: outcome.code, strong: true, ...(linked ? paperOf(outcome) : {}) }),
      key: ({ outcome }) => outcome.code,
    },
    {
      id: 'why',
      width: 0.27,
      cell: (line) => ({
        first: topicText(speaker, line),
        text: withPoints(speaker, line, briefReasons(speaker, line.reasons)),
      }),
      key: (line) => topicText(speaker, line),
    },
    ...(pictured ? [glance] : []),
    {
      id: 'tier',
      width: 0.12,
      cell: ({ tier }) => ({ text: tierName(speaker, tier) }),
      // By group, and within it in the order of the list.
      key: ({ tier, number }) => tiers.indexOf(tier) * lines.length + number,
    },
    {
      id: 'order',
      width: 0.05,
      cell: ({ number }) => ({ text: speaker.number(number, 0) }),
      key: ({ number }) => number,
    },
    ...(isCompared(lines)
      ? [
          {
            id: 'since' as const,
            width: 0.16,
            cell: (line: WorklistLine) => ({ text: withAgreed(speaker, line, sinceText(speaker, line)) }),
          },
        ]
      : []),
    {
      id: 'hours',
      width: 0.1,
      cell: (line) => ({
        text: [hoursText(speaker, line), ...(pictured ? [] : [upTo(speaker, line)])].join('\n').trim(),
      }),
      key: ({ outcome }) => outcome.facts?.coverage.hours ?? '',
    },
    {
      id: 'visit',
      width: 0.08,
      cell: (line) => ({ text: visitText(speaker, line) }),
      key: ({ outcome }) => (outcome.visit === null ? '' : `${outcome.visit} ${outcome.time ?? '~'}`),
    },
  ];
  return [
    heading(2, caption),
    {
      ...tableOf(caption, columns, lines, speaker),
      find: findBy(lines, columns, tiers, speaker),
      keys: lines.map((line) => columns.map(({ key, cell }) => key?.(line) ?? cell(line).text)),
    },
  ];
}

/** By group, day of the visit and code. Values stand in the order of the groups, and of the days. */
function findBy(
  lines: readonly WorklistLine[],
  columns: readonly Column[],
  tiers: readonly Tier[],
  speaker: Speaker,
): { column: number; values?: string[]; order?: string[] }[] {
  const at = (id: Column['id']): number => columns.findIndex((column) => column.id === id);
  const day = ({ outcome: { visit } }: WorklistLine): string =>
    visit === null ? '' : speaker.value({ q: 'date', value: visit }, 'compact');
  const names = tiers.map((tier) => tierName(speaker, tier));
  const days = [...new Set(byVisitDay(lines).map(day))];
  return [
    { column: at('tier'), values: lines.map(({ tier }) => tierName(speaker, tier)), order: names },
    ...(days.some((one) => one !== '') ? [{ column: at('visit'), values: lines.map(day), order: days }] : []),
    { column: at('code') },
  ];
}

const byVisitDay = (lines: readonly WorklistLine[]): WorklistLine[] =>
  [...lines].sort((a, b) => {
    const [x, y] = [a.outcome.visit ?? '', b.outcome.visit ?? ''];
    return x < y ? -1 : x > y ? 1 : 0;
  });

/** The report for the team, as a page where there is one. */
function paperOf({ stem, outputs }: WorklistLine['outcome']): { link?: string } {
  const names = outputs.map(({ name }) => name).filter((name) => name.startsWith(`${stem}-clinic-report.`));
  const name = names.find((one) => one.endsWith('.html')) ?? names[0];
  return name === undefined ? {} : { link: `${stem}/${name}` };
}
