import type { Analysis } from '../../analyse.ts';
import { base64 } from '../../bytes/hash.ts';
import type { FhirLeft } from '../../model/clinic.ts';
import { type About, aboutOf, entryOf } from './about.ts';
import { LAB, loinc, PROFILE } from './codes.ts';
import { type Bundle, type Entry, entry, uuid } from './entries.ts';
import { noteEntries } from './notes.ts';
import { readingEntries } from './readings.ts';
import { summaryOf } from './summary.ts';

export type { Bundle, Entry, Resource } from './entries.ts';

export interface FhirOptions {
  /** The clinic report, to be embedded. */
  pdf: Uint8Array;
  /** Every sensor reading and note too; a fortnight at three minutes is 6,720 readings. */
  readings: boolean;
  /**
   * The clinic's own system of identifiers, an address (https, urn:oid, urn:uuid). Without it nothing sent has an identifier: two
   * clinics' `P-17` must never meet, and what is sent twice stands twice.
   */
  system?: string | undefined;
}

/**
 * An analysis as the data submission bundle of the HL7 FHIR CGM guide 1.0.0 on R4: the person, the report with its PDF,
 * the summary with its members, and on request readings and notes. The same analysis, date of printing and PDF, the same
 * bundle. This material contains content from LOINC (http://loinc.org); see docs/clinic.md.
 */
export function fhirBundle(analysis: Analysis, { pdf, readings, system }: FhirOptions): Bundle {
  const about = aboutOf(analysis, system);
  const { panel, members } = summaryOf(about);
  return {
    resourceType: 'Bundle',
    meta: { profile: [`${PROFILE}cgm-data-submission-bundle`] },
    type: 'transaction',
    // The guide wants an instant; what is known is the day of printing, and so its start in UTC stands here, and no `issued` elsewhere.
    timestamp: `${analysis.settings.today}T00:00:00Z`,
    entry: [
      patient(about),
      report(about, panel ? [panel] : members, pdf),
      ...(panel ? [panel] : []),
      ...members,
      ...(readings ? [...readingEntries(about), ...noteEntries(about)] : []),
    ],
  };
}

/** What such a bundle leaves out, to be said to whoever sends it. */
export function fhirLeft(analysis: Analysis, { readings, system }: Omit<FhirOptions, 'pdf'>): FhirLeft {
  const about = aboutOf(analysis, system);
  const { timeline } = analysis;
  return {
    readings: readings && !timeline.placed ? timeline.readings.count : 0,
    notes: readings ? timeline.notes.length - noteEntries(about).length : 0,
    results: summaryOf(about).withheld,
    unidentified: about.known === undefined,
  };
}

/** The code where the clinic says whose it is, and a name only where one was given to be printed. */
function patient({ analysis, known, person }: About): Entry {
  const { name, clinic } = analysis.settings.person;
  return entry(
    uuid(person, 'person'),
    {
      resourceType: 'Patient',
      ...(name === undefined ? {} : { name: [{ text: name }] }),
      ...(clinic === undefined ? {} : { managingOrganization: { display: clinic } }),
    },
    known,
  );
}

function report(about: About, results: readonly Entry[], pdf: Uint8Array): Entry {
  const { timeline, settings } = about.analysis;
  const { clinic } = settings.person;
  return entryOf(about, uuid(about.seed, 'cgm-summary-pdf', settings.today), {
    resourceType: 'DiagnosticReport',
    meta: { profile: [`${PROFILE}cgm-summary-pdf`] },
    status: 'final',
    category: [LAB],
    code: loinc('107931-8', 'Continuous glucose monitoring summary panel - Reporting Period'),
    subject: about.subject,
    effectivePeriod: { start: timeline.from, end: timeline.to },
    ...(clinic === undefined ? {} : { performer: [{ display: clinic }] }),
    ...(results.length === 0 ? {} : { result: results.map(({ fullUrl }) => ({ reference: fullUrl })) }),
    presentedForm: [{ contentType: 'application/pdf', data: base64(pdf) }],
  });
}
