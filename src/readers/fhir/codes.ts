import { listIn, objectIn, textIn } from '../json/fields.ts';

const LOINC = 'http://loinc.org';
const SNOMED = 'http://snomed.info/sct';
const MDC = 'urn:iso:std:iso:11073:10101';
const CGM_BALLOT = 'http://hl7.org/fhir/uv/cgm/CodeSystem/cgm-summary-codes-temporary';

/** What an Observation's code says it is. Codes as in the HL7 CGM guide 1.0.0 and LOINC; see docs for the notice. */
export type ObservationKind =
  | 'sensor'
  | 'body-fluid'
  | 'fingerstick'
  | 'laboratory'
  | 'carbohydrate'
  | 'exercise'
  | 'duration'
  | 'summary';

const KINDS: Record<ObservationKind, string[]> = {
  sensor: ['99504-3', '105272-9'],
  // "in Body fluid": used for sensors before they had codes of their own.
  'body-fluid': ['14745-4', '2344-0'],
  fingerstick: ['41653-7', '14743-9', '2339-0', '15074-8'],
  laboratory: ['2345-7', '14749-6'],
  carbohydrate: ['9059-7', '9060-5'],
  exercise: ['73985-4', '55409-7'],
  duration: ['55411-3', '77592-4', '77593-2'],
  summary: [
    '107931-8',
    '97507-8',
    '105273-7',
    '106793-3',
    '104642-4',
    '104641-6',
    '97510-2',
    '104640-8',
    '104639-0',
    '97506-0',
    '104638-2',
    '104636-6',
    '104637-4',
    '104634-1',
    '104635-8',
    '104643-2',
  ],
};

const BY_CODE = new Map<string, ObservationKind>();
for (const [kind, codes] of Object.entries(KINDS) as [ObservationKind, string[]][]) {
  for (const code of codes) BY_CODE.set(`${LOINC}|${code}`, kind);
}
BY_CODE.set(`${MDC}|160212`, 'sensor');
BY_CODE.set(`${MDC}|160184`, 'fingerstick');
BY_CODE.set(`${SNOMED}|788472008`, 'carbohydrate');

const USABLE = new Set(['final', 'amended', 'corrected', 'preliminary']);

/** Whether an Observation of this status may be used (FHIR R4, Observation.status). */
export const isUsable = (status: string): boolean => USABLE.has(status);

const MASS = new Set(['99504-3', '2344-0', '41653-7', '2339-0', '2345-7']);
const MOLAR = new Set(['105272-9', '14745-4', '14743-9', '15074-8', '14749-6']);

/** The unit a LOINC code for glucose speaks of. */
export function unitOfCode(code: unknown): 'mg/dL' | 'mmol/L' | undefined {
  for (const coding of listIn(code, 'coding')) {
    if (textIn(coding, 'system') !== LOINC) continue;
    if (MASS.has(textIn(coding, 'code'))) return 'mg/dL';
    if (MOLAR.has(textIn(coding, 'code'))) return 'mmol/L';
  }
  return undefined;
}

/** Any coding may match; displays are in many languages and never looked at. */
export function observationKind(code: unknown): ObservationKind | undefined {
  for (const coding of listIn(code, 'coding')) {
    const system = textIn(coding, 'system');
    const kind = BY_CODE.get(`${system}|${textIn(coding, 'code')}`);
    if (kind) return kind;
    if (system === CGM_BALLOT) return 'summary';
  }
  return undefined;
}

/** First code as `system|code`, or the text: for telling what was not read. */
export function codeName(code: unknown): string {
  const coding = objectIn(listIn(code, 'coding')[0]);
  return coding ? textIn(coding, 'code') || textIn(coding, 'display') : textIn(code, 'text');
}

/** "Exercise intensity" (LOINC), told with the exercise that names it as its part or member. */
export const isIntensity = (code: unknown): boolean => codeName(code) === '74008-4';

/** What people read: the text, else a display. */
export function conceptText(concept: unknown): string {
  const text = textIn(concept, 'text');
  if (text !== '') return text;
  for (const coding of listIn(concept, 'coding'))
    if (textIn(coding, 'display') !== '') return textIn(coding, 'display');
  return '';
}

/** Insulin by its ATC class (A10A…) or SNOMED CT code; the name decides only where no code of these is given. */
export function isInsulin(concept: unknown): boolean {
  for (const coding of listIn(concept, 'coding')) {
    const code = textIn(coding, 'code');
    const system = textIn(coding, 'system');
    if (system === 'http://www.whocc.no/atc') return code.startsWith('A10A');
    if (system === SNOMED && (code === '67866001' || code === '411531001')) return true;
  }
  return /insul/i.test(conceptText(concept));
}

/** Insulin units as UCUM writes them and as they are found; `U` is strictly another unit and common all the same. */
export function isInsulinUnit(quantity: unknown): boolean {
  const code = textIn(quantity, 'code') || textIn(quantity, 'unit');
  return /^(?:\[i?u\]|iu|u|units?|e|ie|ky|ui)$/i.test(code.trim());
}
