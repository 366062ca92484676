/**
 * What the HL7 FHIR CGM guide 1.0.0 (STU 1, hl7.org/fhir/uv/cgm, on R4 4.0.1) asks of each profile, as its published
 * structure definitions say: fixed codes, unit code and unit text, cardinalities, what has to be there. Read in the guide's
 * sources (HL7/cgm, CC0-1.0). Not checked here, for want of a full validator: terminology bindings beyond the codes below, the
 * narrative, the FHIRPath invariants of R4 base resources other than obs-6, and reference targets' own profiles.
 */
interface Rule {
  type: string;
  code: string;
  unit?: [code: string, text: string];
  time: 'effectivePeriod' | 'effectiveDateTime';
  value: 'none' | 'one' | 'optional' | 'one-or-absent';
}

const period = 'effectivePeriod' as const;
export const RULES: Record<string, Rule> = {
  'cgm-sensor-reading-mass-per-volume': {
    type: 'Observation',
    code: '99504-3',
    unit: ['mg/dL', 'mg/dl'],
    time: 'effectiveDateTime',
    value: 'one-or-absent',
  },
  'cgm-sensor-reading-moles-per-volume': {
    type: 'Observation',
    code: '105272-9',
    unit: ['mmol/L', 'mmol/l'],
    time: 'effectiveDateTime',
    value: 'one-or-absent',
  },
  'cgm-summary': { type: 'Observation', code: '107931-8', time: period, value: 'none' },
  'cgm-summary-mean-glucose-mass-per-volume': {
    type: 'Observation',
    code: '97507-8',
    unit: ['mg/dL', 'mg/dl'],
    time: period,
    value: 'optional',
  },
  'cgm-summary-mean-glucose-moles-per-volume': {
    type: 'Observation',
    code: '105273-7',
    unit: ['mmol/L', 'mmol/l'],
    time: period,
    value: 'optional',
  },
  'cgm-summary-times-in-ranges': { type: 'Observation', code: '106793-3', time: period, value: 'none' },
  'cgm-summary-gmi': { type: 'Observation', code: '97506-0', unit: ['%', '%'], time: period, value: 'one' },
  'cgm-summary-coefficient-of-variation': {
    type: 'Observation',
    code: '104638-2',
    unit: ['%', '%'],
    time: period,
    value: 'one',
  },
  'cgm-summary-days-of-wear': {
    type: 'Observation',
    code: '104636-6',
    unit: ['d', 'days'],
    time: period,
    value: 'one',
  },
  'cgm-summary-sensor-active-percentage': {
    type: 'Observation',
    code: '104637-4',
    unit: ['%', '%'],
    time: period,
    value: 'one',
  },
  'cgm-summary-pdf': { type: 'DiagnosticReport', code: '107931-8', time: period, value: 'none' },
};

/** The five components of times in ranges, each exactly once. */
export const RANGES = ['104642-4', '104641-6', '97510-2', '104640-8', '104639-0'];
/** Members of the summary: profile, least, most. */
const MEMBERS: [string, number, number][] = [
  ['cgm-summary-mean-glucose-mass-per-volume', 0, 1],
  ['cgm-summary-mean-glucose-moles-per-volume', 0, 1],
  ['cgm-summary-times-in-ranges', 1, 1],
  ['cgm-summary-gmi', 1, 1],
  ['cgm-summary-coefficient-of-variation', 1, 1],
  ['cgm-summary-days-of-wear', 1, 1],
  ['cgm-summary-sensor-active-percentage', 1, 1],
];

const LOINC = 'http://loinc.org';
const UCUM = 'http://unitsofmeasure.org';
const BASE = 'http://hl7.org/fhir/uv/cgm/StructureDefinition/';
const DATE = /^\d{4}-\d{2}-\d{2}$/;
/** R4: a time of day asks for an offset; `-00:00` would say that it is not known. */
const DATE_TIME = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d+)?(Z|[+-]\d{2}:\d{2})$/;
/** FHIR allows no empty strings, arrays or objects anywhere (R4, JSON representation). */
const EMPTY = (value: unknown): boolean =>
  value === '' ||
  value === null ||
  value === undefined ||
  (typeof value === 'object' && Object.keys(value as object).length === 0);

// biome-ignore lint/suspicious/noExplicitAny: parsed JSON of unknown shape is what is being checked.
type Json = any;

/** Everything in a bundle that breaks the guide, as short texts; empty when nothing does. */
export function breaches(bundle: Json): string[] {
  const found: string[] = [];
  const say = (where: string, what: string): void => void found.push(`${where}: ${what}`);
  if (bundle.resourceType !== 'Bundle' || bundle.type !== 'transaction') say('bundle', 'no transaction');
  if (!DATE_TIME.test(bundle.timestamp ?? '')) say('bundle', 'timestamp');
  if (!(bundle.entry?.length > 0)) say('bundle', 'no entries');
  const byUrl = new Map<string, Json>();
  for (const { fullUrl, resource, request } of bundle.entry) {
    if (!/^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/.test(fullUrl))
      say(fullUrl, 'fullUrl');
    if (byUrl.has(fullUrl)) say(fullUrl, 'twice');
    byUrl.set(fullUrl, resource);
    if (request?.method !== 'POST' || request.url !== resource.resourceType) say(fullUrl, 'request');
    const [known] = resource.identifier ?? [];
    // What has no identifier of its sender's cannot be told from what was sent before.
    const asked = known && `identifier=${known.system}|${encodeURIComponent(known.value)}`;
    if (request?.ifNoneExist !== asked) say(fullUrl, 'ifNoneExist');
    noEmpty(resource, fullUrl, say);
  }
  if ([...byUrl.values()].filter(({ resourceType }) => resourceType === 'Patient').length > 1)
    say('bundle', 'patients');
  for (const [url, resource] of byUrl) {
    if (resource.resourceType === 'Patient') continue;
    if (!resource.meta?.profile && NOTES.has(resource.resourceType)) {
      note(resource, byUrl, (what) => say(`${resource.resourceType} ${url}`, what));
      continue;
    }
    const profile = resource.meta?.profile?.[0]?.replace(BASE, '');
    const rule = RULES[profile];
    if (!rule) say(url, `profile ${profile}`);
    else check(resource, profile, rule, byUrl, (what) => say(`${profile} ${url}`, what));
  }
  return found;
}

function noEmpty(value: Json, where: string, say: (where: string, what: string) => void): void {
  if (EMPTY(value)) say(where, 'empty');
  else if (typeof value === 'object')
    for (const [name, inner] of Object.entries(value)) noEmpty(inner, `${where}.${name}`, say);
}

function check(
  resource: Json,
  profile: string,
  rule: Rule,
  byUrl: Map<string, Json>,
  say: (what: string) => void,
): void {
  if (resource.resourceType !== rule.type) say('type');
  if (resource.status !== 'final') say('status');
  const { coding } = resource.code ?? {};
  if (coding?.length !== 1 || coding[0].system !== LOINC || coding[0].code !== rule.code) say('code');
  if (byUrl.get(resource.subject?.reference)?.resourceType !== 'Patient') say('subject');
  if (rule.time === 'effectivePeriod') {
    const { start, end } = resource.effectivePeriod ?? {};
    if (!DATE.test(start ?? '') || !DATE.test(end ?? '') || start > end) say('effectivePeriod');
  } else if (!DATE_TIME.test(resource.effectiveDateTime ?? '')) say('effectiveDateTime');
  const { valueQuantity: value, dataAbsentReason: absent } = resource;
  if (value && rule.value === 'none') say('a value');
  if (!value && rule.value === 'one') say('no value');
  if (rule.value === 'one-or-absent' && !value === !absent) say('cgm-sensor-value-or-dar');
  // R4, obs-6: a reason for absence only without a value.
  if (value && absent) say('obs-6');
  if (value && rule.unit) unit(value, rule.unit, say);
  if (profile === 'cgm-summary') members(resource, byUrl, say);
  if (profile === 'cgm-summary-times-in-ranges') {
    const codes = resource.component?.map((one: Json) => one.code.coding[0].code) ?? [];
    if (codes.join() !== RANGES.join()) say(`components ${codes}`);
    for (const one of resource.component ?? []) unit(one.valueQuantity ?? {}, ['%', '%'], say);
  }
  if (profile === 'cgm-summary-pdf') {
    const forms = resource.presentedForm ?? [];
    const whole = forms.every((form: Json) => form.contentType === 'application/pdf' && form.data && !form.url);
    if (forms.length < 1 || !whole) say('presentedForm');
    for (const { reference } of resource.result ?? []) if (!byUrl.has(reference)) say(`result ${reference}`);
  }
}

/** Resources of notes, for which the guide has no profiles and its bundle has room. */
const NOTES = new Set(['Observation', 'MedicationAdministration', 'DeviceUseStatement']);
const TIME_KEYS = ['effectiveDateTime', 'effectivePeriod', 'timingDateTime'];

/** What R4 itself asks of the notes' resources: status, what it is about, whose, one time, and of an observation a code (R4, 4.0.1). */
function note(resource: Json, byUrl: Map<string, Json>, say: (what: string) => void): void {
  const observed = resource.resourceType === 'Observation';
  if (resource.status !== (observed ? 'final' : 'completed')) say('status');
  if (byUrl.get(resource.subject?.reference)?.resourceType !== 'Patient') say('subject');
  const times = TIME_KEYS.filter((key) => resource[key] !== undefined);
  if (times.length !== 1) say(`times ${times}`);
  const { start, end } = resource.effectivePeriod ?? {};
  for (const time of [resource.effectiveDateTime, resource.timingDateTime, start, end])
    if (time !== undefined && !DATE.test(time) && !DATE_TIME.test(time)) say(`time ${time}`);
  if (start !== undefined && Date.parse(start) > Date.parse(end)) say('a period that runs backwards');
  if (observed && !resource.code) say('code');
  if (resource.resourceType === 'MedicationAdministration' && !resource.medicationCodeableConcept?.text)
    say('medication');
  // R4, DeviceUseStatement: the device is asked for.
  if (resource.resourceType === 'DeviceUseStatement' && !resource.device?.reference) say('device');
}

function unit(quantity: Json, [code, text]: [string, string], say: (what: string) => void): void {
  if (typeof quantity.value !== 'number' || !Number.isFinite(quantity.value)) say('value');
  if (quantity.system !== UCUM || quantity.code !== code || quantity.unit !== text) say(`unit ${quantity.unit}`);
}

function members({ hasMember = [] }: Json, byUrl: Map<string, Json>, say: (what: string) => void): void {
  if (hasMember.length < 6) say('fewer than six members');
  const profiles = hasMember.map(({ reference }: Json) => byUrl.get(reference)?.meta.profile[0].replace(BASE, ''));
  if (profiles.includes(undefined)) say('a member that is not in the bundle');
  for (const [profile, least, most] of MEMBERS) {
    const n = profiles.filter((one: string) => one === profile).length;
    if (n < least || n > most) say(`${n} times ${profile}`);
  }
}
