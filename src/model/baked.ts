import type { LogWords } from './logbook.ts';
import type { TopicRow } from './topics.ts';
import type { Medicine } from './trust.ts';

/** What a clinic puts into a copy of the page that it hands out. */
export interface Baked {
  /** Settings as a file of them holds them, none of which is about one person. */
  settings: Readonly<Record<string, unknown>>;
  /** Day of making, YYYY-MM-DD. */
  date: string;
  /** Thresholds of the worklist, as their file holds them. */
  thresholds?: unknown;
  /** Files of `templates/` that the clinic has changed, as they stand, by name. */
  words?: Readonly<Record<string, unknown>>;
  logWords?: LogWords;
  medicines?: readonly Medicine[];
  topicOrder?: readonly TopicRow[];
}
