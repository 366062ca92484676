/** Every path in a document with the types found there; items of a list are one path, `[]`. Maps by date or code too. */
export function shapeOf(document: unknown): Record<string, string> {
  const found = new Map<string, Set<string>>();
  const walk = (value: unknown, path: string): void => {
    const type = value === null ? 'null' : Array.isArray(value) ? 'list' : typeof value;
    found.set(path, (found.get(path) ?? new Set()).add(type));
    if (Array.isArray(value)) for (const item of value) walk(item, `${path}[]`);
    else if (type === 'object') {
      for (const [name, inner] of Object.entries(value as object)) walk(inner, path === '' ? name : `${path}.${name}`);
    }
  };
  walk(document, '');
  return Object.fromEntries(
    [...found].sort(([a], [b]) => (a < b ? -1 : 1)).map(([path, types]) => [path, [...types].sort().join('|')]),
  );
}
