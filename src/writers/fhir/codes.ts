/** Names of systems, as HL7 FHIR R4 and the CGM guide 1.0.0 (http://hl7.org/fhir/uv/cgm) write them. */
export const LOINC = 'http://loinc.org';
export const UCUM = 'http://unitsofmeasure.org';
export const ATC = 'http://www.whocc.no/atc';
export const PROFILE = 'http://hl7.org/fhir/uv/cgm/StructureDefinition/';
export const TZ_CODE = 'http://hl7.org/fhir/StructureDefinition/tz-code';
/** Ours, a name that needs no registration: identifiers of what this program writes. */
export const OWN = 'urn:uuid:5d3c4e0e-6a0b-5c57-9b0a-3f1f2f0f7a11';

export interface Coding {
  system: string;
  code: string;
  display?: string;
}

export const loinc = (code: string, display?: string): { coding: Coding[] } => ({
  coding: [{ system: LOINC, code, ...(display === undefined ? {} : { display }) }],
});

/**
 * Units with the very texts that the guide's patterns ask for: the code is `mg/dL` and its text `mg/dl`. Read in the
 * guide's published profiles.
 */
const TEXTS = { 'mg/dL': 'mg/dl', 'mmol/L': 'mmol/l', '%': '%', d: 'days' } as const;
export type UnitCode = keyof typeof TEXTS;

export interface Quantity {
  value: number;
  comparator?: '<' | '>';
  unit: string;
  system: string;
  code: string;
}

/** Twelve digits: all there is in a measured number, without the dust of binary fractions. */
export const quantity = (value: number, code: UnitCode, comparator?: '<' | '>'): Quantity => ({
  value: Number(value.toPrecision(12)),
  ...(comparator === undefined ? {} : { comparator }),
  unit: TEXTS[code],
  system: UCUM,
  code,
});

/** Kind of a device's name (R4, device-nametype). */
export const DEVICE_NAME = 'user-friendly-name';

/** What the guide's own examples write, and its scopes filter on. */
export const LABORATORY = {
  coding: [{ system: 'http://terminology.hl7.org/CodeSystem/observation-category', code: 'laboratory' }],
};
export const LAB = { coding: [{ system: 'http://terminology.hl7.org/CodeSystem/v2-0074', code: 'LAB' }] };
