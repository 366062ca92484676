import { type About, entryOf } from './about.ts';
import { LABORATORY, PROFILE } from './codes.ts';
import type { Entry } from './entries.ts';

interface Observed {
  id: string;
  /** Last part of the profile's address. */
  profile: string;
  code: unknown;
  /** When, and what was found. */
  content: Record<string, unknown>;
}

/** A result of the person: one number of the summary, or one reading. */
export const observation = (about: About, { id, profile, code, content }: Observed): Entry =>
  entryOf(about, id, {
    resourceType: 'Observation',
    meta: { profile: [`${PROFILE}${profile}`] },
    status: 'final',
    category: [LABORATORY],
    code,
    subject: about.subject,
    ...content,
  });
