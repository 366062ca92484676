import * as z from 'zod';
import type { ValueKind } from '../model/detail.ts';
import type { Issue } from '../model/input.ts';
import type { Tells } from '../model/issues.ts';
import { dateOrder, glucoseUnit, targetId } from './parts.ts';
import './jitless.ts';
import { MOST_TOLD } from './problems.ts';

/** What may stand in a `settings.json` beside the inputs: the names of the command's options. */
export interface FolderSettings {
  unit?: 'mg/dL' | 'mmol/L' | undefined;
  zone?: string | undefined;
  dateOrder?: 'day-first' | 'month-first' | 'year-first' | undefined;
  targets?: 'adult' | 'older' | 'pregnancy-type-1' | 'pregnancy-other' | undefined;
  days?: number | undefined;
  from?: string | undefined;
  to?: string | undefined;
  paper?: 'a4' | 'letter' | undefined;
  grey?: boolean | undefined;
  large?: boolean | undefined;
  /** List rises without a food note as meals that nobody wrote down. */
  inferMeals?: boolean | undefined;
  language?: 'en' | 'es' | undefined;
  /** Where the papers are read, e.g. `es-MX`. */
  region?: string | undefined;
  name?: string | undefined;
  code?: string | undefined;
  clinic?: string | undefined;
  /** The clinic's telephone, as the person may dial it. */
  phone?: string | undefined;
  /** The clinic's own system of identifiers in FHIR. */
  fhirSystem?: string | undefined;
  /** Path of a layout file, from the folder of the settings file. */
  layout?: string | undefined;
  /** `previous`, `FROM..TO`, or paths of visit files or of folders of them, from the folder of the settings file. */
  compare?: string | string[] | undefined;
  /** Path of what was agreed, as text or JSON, from the folder of the settings file. */
  agreed?: string | undefined;
  /** Id of the finding that the visit is to be about, among those that hold. */
  topic?: string | undefined;
  /** `YYYY-MM-DD what changed`. */
  changed?: string | undefined;
  /** Laboratory A1C, percent or mmol/mol. */
  a1c?: string | undefined;
  /** Due date of a pregnancy. */
  dueDate?: string | undefined;
  /** Goals of the clinic in pregnancy: fasting, 1 hour, 2 hours (`90/130/115`). */
  pregnancyGoals?: string | undefined;
  moreIndices?: boolean | undefined;
  /** Names of files, or the person's code. */
  acceptLosses?: string[] | undefined;
  /** Whether a visit file is written for the next visit. */
  snapshot?: boolean | undefined;
  /** Date of printing. */
  date?: string | undefined;
}

const date = z.iso.date();
const path = z.string().min(1).max(400);
const line = z.string().min(1).max(80);

export const folderSettings = z.strictObject({
  unit: glucoseUnit.optional(),
  zone: line.optional(),
  dateOrder: dateOrder.optional(),
  targets: targetId.optional(),
  days: z.int().min(1).max(366).optional(),
  from: date.optional(),
  to: date.optional(),
  paper: z.enum(['a4', 'letter']).optional(),
  grey: z.boolean().optional(),
  large: z.boolean().optional(),
  inferMeals: z.boolean().optional(),
  language: z.enum(['en', 'es']).optional(),
  region: line.optional(),
  name: line.optional(),
  code: line.optional(),
  clinic: line.optional(),
  phone: z.string().min(1).max(40).optional(),
  fhirSystem: z
    .string()
    .max(200)
    .regex(/^(?:https?:\/\/|urn:(?:oid|uuid):)[^\s|<>"]+$/)
    .optional(),
  layout: z.string().min(1).optional(),
  compare: z.union([path, z.array(path).min(1).max(60)]).optional(),
  agreed: path.optional(),
  topic: line.optional(),
  dueDate: date.optional(),
  pregnancyGoals: z.string().min(5).max(20).optional(),
  changed: z.string().min(12).max(100).optional(),
  a1c: z.string().min(1).max(20).optional(),
  moreIndices: z.boolean().optional(),
  acceptLosses: z.array(z.string().min(1).max(400)).max(100).optional(),
  snapshot: z.boolean().optional(),
  date: date.optional(),
}) satisfies z.ZodType<FolderSettings>;

/** Kinds of value as zod calls them. */
const KINDS: Partial<Record<string, ValueKind>> = {
  string: 'json-string',
  number: 'json-number',
  int: 'json-number',
  boolean: 'json-boolean',
  array: 'json-list',
  object: 'json-object',
};

/** So many letters of one mistake are told. */
const LETTERS = 80;

/** Reads the text of a settings file. What does not fit is told place by place, and nothing of the file is used. */
export const readSettings = (text: string, file: string): { settings: FolderSettings } | { issues: Issue[] } =>
  readWith(folderSettings, text, file);

/** The same with a schema that knows more names. */
export function readWith<T>(
  schema: z.ZodType<T> & { shape: Record<string, unknown> },
  text: string,
  file: string,
): { settings: T } | { issues: Issue[] } {
  let content: unknown;
  try {
    content = JSON.parse(text);
  } catch (error) {
    const line = lineOf(text, error);
    return { issues: [{ code: 'settings-not-json', level: 'refusal', origin: { file, line } }] };
  }
  const checked = schema.safeParse(content);
  if (checked.success) return { settings: checked.data };
  const shown = {
    names: Object.keys(schema.shape),
    originOf: (name: string) => ({ file, line: lineOfName(text, name) }),
  };
  return { issues: issuesOf(checked.error, shown) };
}

/** What does not fit, place by place, as a refusal each. */
export function issuesOf(
  { issues }: z.ZodError,
  { names, originOf }: { names: readonly string[]; originOf?: (name: string) => Issue['origin'] },
): Issue[] {
  return issues.slice(0, MOST_TOLD).flatMap((issue) => {
    const places =
      issue.code === 'unrecognized_keys' ? issue.keys.slice(0, MOST_TOLD) : [issue.path.join('.') || '{ }'];
    return places.map((whole): Issue => {
      const name = whole.slice(0, LETTERS);
      const origin = originOf?.(name);
      const at = { level: 'refusal', actual: name, ...(origin && { origin }) } as const;
      if (issue.code === 'unrecognized_keys')
        return { code: 'settings-unknown-name', ...at, expected: names.join(', ') };
      return { code: 'settings-wrong-value', ...at, expected: expectation(issue) };
    });
  });
}

function expectation(issue: z.core.$ZodIssue): Tells<'settings-wrong-value'>['expected'] {
  if (issue.code === 'invalid_value') return issue.values.map(String).join(' | ');
  if (issue.code === 'invalid_type') return { is: KINDS[issue.expected] ?? 'json-other' };
  if (issue.code === 'invalid_format') return issue.format === 'date' ? 'YYYY-MM-DD' : issue.format;
  if (issue.code === 'too_small') return `≥ ${issue.minimum}`;
  if (issue.code === 'too_big') return `≤ ${issue.maximum}`;
  return issue.code;
}

/** The parser tells a place in characters or nothing at all; people count lines. */
function lineOf(text: string, error: unknown): number {
  const position = /position (\d+)/.exec(error instanceof Error ? error.message : '');
  const before = position ? text.slice(0, Number(position[1])) : text;
  return before.split('\n').length;
}

function lineOfName(text: string, name: string): number {
  const at = text.indexOf(`"${name}"`);
  return at < 0 ? 1 : text.slice(0, at).split('\n').length;
}
