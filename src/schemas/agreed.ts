import type { Agreed } from '../model/visits.ts';
import { check } from './problems.ts';
import { type AgreedJson, agreed } from './visit.ts';

export type ReadAgreed = { ok: true; agreed: Agreed } | { ok: false; problems: string[] };

/** What a form calls each field, in every language there is. */
export type FormLabels = Record<keyof Agreed, readonly string[]>;

/**
 * Reads what was agreed, as JSON or as the lines of a form: a label, a colon, what was agreed. Lines that begin with # and
 * fields left empty say nothing. What does not fit is told with its line or its name, and nothing of the file is used.
 */
export function readAgreed(text: string, labels: FormLabels): ReadAgreed {
  if (!text.trimStart().startsWith('{')) return ofForm(text, labels);
  try {
    return checked(JSON.parse(text));
  } catch {
    return { ok: false, problems: ['JSON'] };
  }
}

function ofForm(text: string, labels: FormLabels): ReadAgreed {
  const names = Object.entries(labels).flatMap(([name, each]) =>
    [name, ...each].map((label) => [plain(label), name] as const),
  );
  const fields = new Map(names);
  const found: Record<string, string | number> = {};
  const problems: string[] = [];
  for (const [i, line] of text.split(/\r\n|\n|\r/).entries()) {
    if (line.trim() === '' || line.trimStart().startsWith('#')) continue;
    const colon = line.indexOf(':');
    const name = colon < 0 ? undefined : fields.get(plain(line.slice(0, colon)));
    const value = line.slice(colon + 1).trim();
    const again = name !== undefined && Object.hasOwn(found, name);
    if (name !== undefined && again && OF_LINES.has(name)) {
      if (value !== '') found[name] = `${found[name]}\n${value}`;
    } else if (name === undefined || again) problems.push(`${i + 1}: ${line.trim().slice(0, SHOWN)}`);
    else if (value !== '') found[name] = name === 'sure' && /^\d{1,2}$/.test(value) ? Number(value) : value;
  }
  return problems.length > 0 ? { ok: false, problems } : checked(found);
}

const SHOWN = 60;
/** Given again, the label begins another line. */
const OF_LINES: ReadonlySet<string> = new Set(['remarks', 'interpretation'] satisfies (keyof Agreed)[]);

/** A label without case, accents, marks and what stands in brackets. */
const plain = (label: string): string =>
  label
    .replace(/\([^)]*\)/g, '')
    .normalize('NFD')
    .replace(/[^\p{L}\p{N} ]+/gu, '')
    .toLowerCase()
    .trim();

/** The schema checked its days to be days of the calendar. */
export const withDays = (checked: AgreedJson): Agreed => checked as Agreed;

function checked(content: unknown): ReadAgreed {
  const found = check(agreed, content, 'agreed');
  if (!found.ok) return found;
  const { nextVisit, ...rest } = withDays(found.value);
  return { ok: true, agreed: { ...rest, ...(nextVisit === undefined ? {} : { nextVisit }) } };
}
