import { fingerprint } from '../bytes/hash.ts';
import { isolated, type Speaker, speakerOf } from '../language/index.ts';
import type { Facts, WorklistLine } from '../model/clinic.ts';
import type { LocalDate } from '../model/glucose.ts';
import type { Report } from '../model/report.ts';
import { type WorklistContent, worklistPage } from '../pages/worklist.ts';
import {
  agreedText,
  hoursText,
  pointsText,
  reasonsText,
  sinceText,
  tierName,
  topicText,
} from '../pages/worklistTexts.ts';
import type { Thresholds } from '../schemas/thresholds.ts';
import { targetSets } from '../targets/index.ts';
import { csvText } from '../writers/csv.ts';
import { orderRules, rulesOf } from './rules.ts';
import { FLAGGED, TIERS } from './tiers.ts';
import { byVisit } from './worklist.ts';

/** The words of a worklist hold no glucose: unit and targets of this speaker are never asked for. */
export const listSpeaker = (words: unknown): Speaker =>
  speakerOf(words, { unit: 'mg/dL', voice: 'clinic', targets: targetSets.adult });

export function contentOf(
  lines: readonly WorklistLine[],
  thresholds: Thresholds,
  passedOver: readonly string[],
  linked: boolean,
  order: WorklistContent['order'] = 'pressing',
  places: number | null = null,
): WorklistContent {
  const flagged = lines.filter(isFlagged).length;
  const ordered = order === 'visit' ? byVisit(lines) : lines;
  const rules = rulesOf(thresholds);
  const line = places === null ? null : lineAt(lines, places);
  return {
    lines: ordered,
    order,
    tiers: TIERS,
    flagged,
    rules,
    orderRules: orderRules(),
    line,
    passedOver,
    linked,
    former: [],
  };
}

const isFlagged = ({ tier }: WorklistLine): boolean => FLAGGED.includes(tier);
/** So many just below the line are named. */
const NEXT = 3;

/** Where the day is full. Nobody leaves the list: who is to be looked at and stands below is counted, and the first of them named. */
function lineAt(lines: readonly WorklistLine[], places: number): NonNullable<WorklistContent['line']> {
  const flagged = lines.filter(isFlagged);
  const below = flagged.filter(({ number }) => number > places);
  return {
    places,
    first: flagged.length - below.length,
    below: below.length,
    lows: below.filter(({ outcome: { facts } }) => (facts?.lows?.level2 ?? 0) > 0).length,
    unread: below.filter(({ outcome: { facts } }) => facts === null).length,
    next: below.slice(0, NEXT),
  };
}

export interface Printing {
  paper: 'a4' | 'letter';
  printed: string;
  /** HH:MM, where a run was made now. */
  time?: string | undefined;
  version: string;
  clinic: string | undefined;
}

/** The worklist to print or for a screen. The same people, thresholds and version, the same twelve digits. */
export function worklistReport(
  content: WorklistContent,
  speaker: Speaker,
  printing: Printing,
  on: 'paper' | 'screen',
): Report {
  const word = (value: string) => ({ q: 'word' as const, value });
  const [hour = 0, minute = 0] = printing.time?.split(':').map(Number) ?? [];
  const time = printing.time === undefined ? null : speaker.value({ q: 'clock', value: hour * 60 + minute });
  const printed = word(speaker.value({ q: 'date', value: printing.printed as LocalDate }, 'dated'));
  const title = speaker.say('clinic.title', { printed });
  const hash = fingerprint(JSON.stringify([printing.version, content.rules, content.lines.map(known)])).slice(0, 12);
  return {
    language: speaker.language,
    direction: speaker.direction,
    paper: printing.paper,
    voice: 'clinic',
    title,
    tab: [...(printing.clinic ? [isolated(printing.clinic)] : []), title].join(' · '),
    header: { left: printing.clinic ?? '', right: title },
    footer: {
      left: speaker.say('pages.worklist.footer', {
        printed,
        version: word(printing.version),
        hash: word(hash),
      }),
      right: speaker.say('pages.paper.pageOf', { page: word('{page}'), pages: word('{pages}') }),
    },
    pages: [worklistPage(content, speaker, on, { printed: printing.printed as LocalDate, time })],
    printed: printing.printed,
  };
}

/** What a line tells. How its papers were packed is no part of it: engines pack differently. */
function known({ outcome, ...line }: WorklistLine) {
  const { key, outputs, ...rest } = outcome;
  return { ...line, outcome: rest };
}

const COLUMNS = [
  'order',
  'code',
  'tier',
  'points',
  'topic',
  'why',
  'hours',
  'period',
  'lastReading',
  'visit',
  'since',
  'agreed',
  'seenBy',
  'seenOn',
  'remark',
  'folder',
  'inputs',
] as const;

/** The worklist as a table for a spreadsheet, in the same order. */
export function worklistCsv(lines: readonly WorklistLine[], speaker: Speaker): string {
  const rows = lines.map((line) => {
    const { outcome, tier, reasons } = line;
    const { facts } = outcome;
    const cells: Record<(typeof COLUMNS)[number], string | number> = {
      order: line.number,
      code: outcome.code,
      tier: tierName(speaker, tier),
      points: pointsText(speaker, line),
      topic: topicText(speaker, line),
      why: reasonsText(speaker, reasons),
      hours: hoursText(speaker, line),
      period: periodText(speaker, facts),
      lastReading: lastStamp(facts),
      visit: outcome.visit ?? '',
      since: sinceText(speaker, line),
      agreed: agreedText(speaker, line),
      seenBy: '',
      seenOn: '',
      remark: '',
      folder: facts ? outcome.stem : '',
      inputs: outcome.inputs.join('; '),
    };
    return COLUMNS.map((column) => cells[column]);
  });
  return csvText([COLUMNS.map((column) => speaker.say(`clinic.columns.${column}`)), ...rows]);
}

const periodText = (speaker: Speaker, facts: Facts | null): string =>
  facts
    ? speaker.say('clinic.periodOf', { from: { q: 'word', value: facts.from }, to: { q: 'word', value: facts.to } })
    : '';

/** As the clock on the wall showed it, for programs. */
function lastStamp(facts: Facts | null): string {
  const { date, minute = 0 } = facts?.lastReading ?? {};
  const two = (n: number): string => String(n).padStart(2, '0');
  return date === undefined ? '' : `${date} ${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
}
