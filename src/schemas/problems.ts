import type * as z from 'zod';
import './jitless.ts';

/** So many mistakes of one file are told; whoever made more has given the wrong file. */
export const MOST_TOLD = 20;

/** So many letters of one mistake are told. */
const LETTERS = 200;
/** And so many of what stands there. */
const SHOWN = 60;
/** So few choices are told with what stands there. */
const FEW = 6;

export type Checked<T> = { ok: true; value: T } | { ok: false; problems: string[] };

/**
 * Parsed JSON as a shape has it, or what does not fit: the place and what stands there; for an unknown name and for one
 * that is lacking the place alone. `whole` stands for the place of all of it.
 */
export function check<T>(shape: z.ZodType<T>, content: unknown, whole: string): Checked<T> {
  try {
    const checked = shape.safeParse(content);
    if (checked.success) return { ok: true, value: checked.data };
    return { ok: false, problems: problemsOf(checked.error, content, whole) };
  } catch (error) {
    // zod hands its issues on as arguments, and of some hundred thousand the engine takes no more.
    if (!(error instanceof RangeError)) throw error;
    return { ok: false, problems: [`${whole}: ${shown(content)}`] };
  }
}

function problemsOf({ issues }: z.ZodError, content: unknown, whole: string): string[] {
  const problems: string[] = [];
  for (const issue of issues) {
    if (problems.length >= MOST_TOLD) break;
    problems.push(...problemsAt(issue, [], content, whole));
  }
  return problems.slice(0, MOST_TOLD).map((problem) => problem.slice(0, LETTERS));
}

function problemsAt(issue: z.core.$ZodIssue, above: PropertyKey[], content: unknown, whole: string): string[] {
  const path = [...above, ...issue.path];
  const place = path.map(String).join('.');
  if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => [...path.map(String), key].join('.'));
  if (issue.code === 'invalid_union') {
    // Of several shapes that which was meant: the one that fits at least as a whole.
    const meant = issue.errors.find((inner) => inner.every((one) => one.path.length > 0 || 'keys' in one));
    const said = meant?.flatMap((inner) => problemsAt(inner, path, content, whole)) ?? [];
    if (said.length > 0) return said;
  }
  const value = path.reduce((at: unknown, name) => (at as Record<PropertyKey, unknown>)?.[name], content);
  if (value === undefined) return [place || whole];
  const choices = issue.code === 'invalid_value' && issue.values.length <= FEW ? issue.values : [];
  const listed = choices.length > 0 ? ` (${choices.map((one) => JSON.stringify(one)).join(' | ')})` : '';
  return [`${place || whole}: ${shown(value).slice(0, SHOWN)}${listed}`];
}

/** Of a list or an object only that it is one: it may be nested too deep to be written out. */
function shown(value: unknown): string {
  if (Array.isArray(value)) return value.length > 0 ? '[…]' : '[]';
  return typeof value === 'object' && value !== null ? '{…}' : (JSON.stringify(value) ?? '');
}
