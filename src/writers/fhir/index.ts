import type { Analysis } from '../../analyse.ts';
import { base64 } from '../../bytes/hash.ts';
import { LAB, loinc, OWN, PROFILE } from './codes.ts';
import { type Bundle, type Entry, entry, identifier, type Resource, urn, uuid } from './entries.ts';
import type { About } from './observation.ts';
import { readingEntries } from './readings.ts';
import { summaryEntries } from './summary.ts';

export type { Bundle, Entry, Resource } from './entries.ts';

export interface FhirOptions {
  /** The clinic report, to be embedded. */
  pdf: Uint8Array;
  /** Every sensor reading too; a fortnight at three minutes is 6,720 of them. */
  readings: boolean;
}

/**
 * An analysis as the data submission bundle of the HL7 FHIR CGM guide 1.0.0 on R4: the person, the report with its PDF,
 * the summary with its members, and on request the readings. The same analysis, date of printing and PDF, the same
 * bundle. This material contains content from LOINC (http://loinc.org); see docs/clinic.md.
 */
export function fhirBundle(analysis: Analysis, { pdf, readings }: FhirOptions): Bundle {
  const { settings, hash } = analysis;
  const code = settings.person.code ?? hash;
  const patientId = uuid('person', code);
  const about: About = { analysis, subject: { reference: urn(patientId) }, seed: `${code} ${hash}` };
  const summary = summaryEntries(about);
  return {
    resourceType: 'Bundle',
    meta: { profile: [`${PROFILE}cgm-data-submission-bundle`] },
    type: 'transaction',
    timestamp: midnight(settings.today),
    entry: [
      patient(patientId, code, settings.person.name),
      report(about, summary, pdf),
      ...summary,
      ...(readings ? readingEntries(about) : []),
    ],
  };
}

/** The date of printing is known to the day only; R4 wants an instant. */
const midnight = (date: string): string => `${date}T00:00:00Z`;

/** The code, and a name only where one was given to be printed. */
function patient(id: string, code: string, name: string | undefined): Entry {
  const resource: Resource = {
    resourceType: 'Patient',
    identifier: [{ system: OWN, value: code }],
    ...(name === undefined ? {} : { name: [{ text: name }] }),
  };
  return entry(id, resource, code);
}

function report({ analysis, subject, seed }: About, summary: readonly Entry[], pdf: Uint8Array): Entry {
  const { timeline, settings } = analysis;
  const id = uuid(seed, 'cgm-summary-pdf', settings.today);
  return entry(id, {
    resourceType: 'DiagnosticReport',
    meta: { profile: [`${PROFILE}cgm-summary-pdf`] },
    identifier: identifier(id),
    status: 'final',
    category: [LAB],
    code: loinc('107931-8', 'Continuous glucose monitoring summary panel - Reporting Period'),
    subject,
    effectivePeriod: { start: timeline.from, end: timeline.to },
    issued: midnight(settings.today),
    // The first of a summary holds the others.
    ...(summary[0] ? { result: [{ reference: summary[0].fullUrl }] } : {}),
    presentedForm: [{ contentType: 'application/pdf', data: base64(pdf) }],
  });
}
