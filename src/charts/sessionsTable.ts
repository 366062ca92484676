import type { Drawing } from '../model/drawing.ts';
import type { MgPerDl } from '../model/glucose.ts';
import type { Session } from '../model/occasions.ts';
import { NIGHT_END } from '../targets/consensus.ts';
import type { ChartContext } from './context.ts';

/** The sessions as rows, for an annex or a screen reader. */
export function sessionsTable(sessions: Session[], { speaker }: ChartContext): NonNullable<Drawing['table']> {
  const glucose = (value: MgPerDl | null) => (value === null ? '–' : speaker.value({ q: 'glucose', value }));
  return {
    columns: [
      speaker.say('charts.words.day'),
      speaker.say('charts.sessions.kind'),
      speaker.say('charts.sessions.first'),
      speaker.say('charts.sessions.start'),
      speaker.say('charts.sessions.untilSix', { six: { q: 'clock', value: NIGHT_END } }),
    ],
    rows: sessions.map((session) => [
      speaker.value({ q: 'date', value: session.date }, 'short'),
      session.kind ?? speaker.say('charts.sessions.unnamed'),
      speaker.say(`charts.sessions.${session.carbsFirst}`),
      glucose(session.start),
      session.untilMorning.low === null ? speaker.say('charts.sessions.unseen') : glucose(session.untilMorning.lowest),
    ]),
  };
}
