import type { Visit } from '../model/visits.ts';
import { LONGEST, plainLine } from './plainLine.ts';
import type { VisitJson } from './visit.ts';
import { VISIT_FORMAT, VISIT_VERSION } from './visit.ts';

/**
 * The text of a visit file: a head, then a line a day. What somebody typed or noted stands in it as the file can be read again:
 * on one line, without signs that steer. `sums` and the head's names are those of the published schema.
 */
export function visitText({ file: _, sums, ...rest }: Visit): string {
  const { days, interval, ...period } = sums;
  const head: Omit<VisitJson, 'days'> = {
    format: VISIT_FORMAT,
    version: VISIT_VERSION,
    origin: rest.origin,
    person: personOf(rest.person),
    period: { from: days[0]!.date, to: days.at(-1)!.date },
    ...period,
    intervalMinutes: interval,
    goals: rest.goals,
    numbers: rest.numbers,
    topic: rest.topic,
    ...(rest.topicByRule === undefined ? {} : { topicByRule: rest.topicByRule }),
    topicMeasure: measureOf(rest.topicMeasure),
    held: rest.held,
    agreed: rest.agreed,
    changed: rest.changed.flatMap(({ on, what }) => {
      const plain = plainLine(what, LONGEST.line);
      return plain === '' ? [] : [{ on, what: plain }];
    }),
  };
  const rows = days.map((day): VisitJson['days'][number] => ({
    date: day.date,
    lengthMinutes: day.length,
    minutes: day.minutes,
    knownMinutes: day.known,
    sumMgPerDlMinutes: day.sum,
    squaresMgPerDl2Minutes: day.squares,
    bandMinutes: day.bands,
    lows: day.lows,
    veryLows: day.veryLows,
    highs: day.highs,
    nightLow: day.nightLow,
  }));
  const text = JSON.stringify(head, null, 1).replace(/\n\}$/, '');
  return `${text},\n "days": [\n${rows.map((row) => `  ${JSON.stringify(row)}`).join(',\n')}\n ]\n}\n`;
}

function personOf({ code, clinic }: Visit['person']): VisitJson['person'] {
  const named = Object.entries({ code, clinic }).map(([key, text]) => [key, plainLine(text ?? '', LONGEST.line)]);
  return Object.fromEntries(named.filter(([, text]) => text !== ''));
}

const measureOf = (measure: Visit['topicMeasure']): VisitJson['topicMeasure'] =>
  measure?.of === 'after-note'
    ? { ...measure, note: { ...measure.note, name: plainLine(measure.note.name, LONGEST.note) } }
    : measure;
