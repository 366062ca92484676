/** Words of a language: texts in sections, with `id`, `locale` and `direction` at the top. */
export interface Words {
  [name: string]: string | Words;
}

/** `base` with the texts of `over` in place of its own, for what differs in one region. Neither is changed. */
export function layered(base: Words, over: Words): Words {
  const both: Words = { ...base };
  for (const [name, value] of Object.entries(over)) {
    const below = both[name];
    both[name] = typeof value === 'object' && typeof below === 'object' ? layered(below, value) : value;
  }
  return both;
}

/** Sections that only the command says, in its own language; no paper shows them. */
const COMMAND_ONLY = /^(cli\.|clinic\.|pages\.worklist\.|issues\.(settings|template)-)/;

/** Keys of `model` that `words` have no text for: a language is whole when there are none. */
export function lacking(words: unknown, model: unknown, path = ''): string[] {
  if (words === model) return [];
  if (typeof model !== 'object' || model === null) {
    return typeof words === 'string' || COMMAND_ONLY.test(path) ? [] : [path];
  }
  return Object.entries(model).flatMap(([name, inner]) => {
    const below = typeof words === 'object' && words !== null ? (words as Words)[name] : undefined;
    return lacking(below, inner, path === '' ? name : `${path}.${name}`);
  });
}
