import type { Analysis } from '../../analyse.ts';
import { LABORATORY, PROFILE } from './codes.ts';
import { type Entry, entry, identifier } from './entries.ts';

/** What all results of one bundle share. */
export interface About {
  analysis: Analysis;
  /** Reference of the patient. */
  subject: { reference: string };
  /** First of every id: the person and the analysis. */
  seed: string;
}

interface Observed {
  id: string;
  /** Last part of the profile's address. */
  profile: string;
  code: unknown;
  /** When, and what was found. */
  content: Record<string, unknown>;
}

/** A result of the person: one number of the summary, or one reading. */
export const observation = ({ subject }: About, { id, profile, code, content }: Observed): Entry =>
  entry(id, {
    resourceType: 'Observation',
    meta: { profile: [`${PROFILE}${profile}`] },
    identifier: identifier(id),
    status: 'final',
    category: [LABORATORY],
    code,
    subject,
    ...content,
  });
