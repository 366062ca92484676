import type { Drawing } from '../model/drawing.ts';
import type { MgPerDl } from '../model/glucose.ts';
import type { Session } from '../model/occasions.ts';
import type { ChartContext } from './context.ts';

/** The sessions as rows, for an annex or a screen reader. */
export function sessionsTable(sessions: Session[], { say }: ChartContext): NonNullable<Drawing['table']> {
  const glucose = (value: MgPerDl | null) => (value === null ? '–' : say.value({ q: 'glucose', value }));
  return {
    columns: [
      say.say('charts.words.day'),
      say.say('charts.sessions.kind'),
      say.say('charts.sessions.first'),
      say.say('charts.sessions.start'),
      say.say('charts.sessions.soon'),
      say.say('charts.sessions.night'),
    ],
    rows: sessions.map((session) => [
      say.value({ q: 'date', value: session.date }, 'short'),
      session.kind ?? say.say('charts.sessions.unnamed'),
      say.say(`charts.sessions.${session.carbsFirst}`),
      glucose(session.start),
      glucose(session.lowestSoon),
      session.night?.low == null ? say.say('charts.sessions.nightUnseen') : glucose(session.night.lowest),
    ]),
  };
}
