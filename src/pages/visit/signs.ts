import type { LongActing } from '../../charts/noteLanes.ts';
import { logReader, NO_LOG_WORDS } from '../../occasions/words.ts';
import type { PageContext } from '../context.ts';

/** Which insulins act for long, by the clinic's own list. */
export function longActing({ analysis }: PageContext): LongActing {
  const read = logReader(analysis.settings.logWords ?? NO_LOG_WORDS);
  return (label) => read.longActing(label);
}
