export type Json = Record<string, unknown>;

/** A field's value only if it has the wanted type; hostile files put anything anywhere. */
export function objectIn(value: unknown, key?: string): Json | undefined {
  const found =
    key === undefined ? value : typeof value === 'object' && value !== null ? (value as Json)[key] : undefined;
  return typeof found === 'object' && found !== null && !Array.isArray(found) ? (found as Json) : undefined;
}

export function listIn(value: unknown, key: string): unknown[] {
  const found = objectIn(value)?.[key];
  return Array.isArray(found) ? found : [];
}

export function textIn(value: unknown, key: string): string {
  const found = objectIn(value)?.[key];
  return typeof found === 'string' ? found : '';
}

export function numberIn(value: unknown, key: string): number | undefined {
  const found = objectIn(value)?.[key];
  return typeof found === 'number' && Number.isFinite(found) ? found : undefined;
}
