import type { Group } from './people.ts';

/** What a file of one person is often called beside another of theirs, after the code. From memory, English and Spanish. */
const ROLES = new Set(
  `notes note log logbook diary food meals carbs insulin doses sensor cgm glucose readings meter fingersticks exercise activity
   notas nota registro diario comida comidas hidratos insulina dosis lecturas glucosa medidor ejercicio actividad`.split(
    /\s+/,
  ),
);
const ENDS = /^(.+?)[-_ .(]+([^-_ .()]+)\)?$/u;
/** What may follow where one name begins with another: a word, a copy's number "(1)", or a number. */
const WORD = /^(?:[-_ .]+\p{L}|[ _-]*\(\d)/u;
const NUMBER = /^[-_ .]+\d/;

const baseOf = (code: string): string => {
  const [, base, role] = ENDS.exec(code) ?? [];
  return base !== undefined && ROLES.has(role!) ? base : code;
};

/**
 * Groups at the top of which nobody can tell whether they are one person's: `p001.csv` and `p001-notes.csv`, `p001-sensor.csv`
 * and `p001-notes.csv`, `P001.csv` and `p001 (1).csv`. Each set once; a group stands in one at most.
 */
export function maybeOne(groups: readonly Group[]): Group[][] {
  const sets = new Map<string, Group[]>();
  const put = (key: string, group: Group): void => {
    const set = sets.get(key) ?? [];
    if (!set.includes(group)) sets.set(key, [...set, group]);
  };
  const lower = (group: Group): string => group.at.toLowerCase();
  const known = new Set(groups.map(lower));
  for (const group of groups) put(rootOf(lower(group), known), group);
  // A subfolder is one person, whatever other subfolders are called.
  return [...sets]
    .map(([key, set]) => set.filter((group) => !group.folder || lower(group) === key))
    .filter((set) => set.length > 1);
}

/** The shortest name here that this one begins with, or the part before its role. */
function rootOf(code: string, known: ReadonlySet<string>): string {
  for (let end = 1; end < code.length; end++) {
    const root = code.slice(0, end);
    const rest = code.slice(end);
    // `P-1` does not ask about `P`; `p001-2` does about `p001`.
    if (known.has(root) && (WORD.test(rest) || (NUMBER.test(rest) && /\d/.test(root)))) return root;
  }
  return baseOf(code);
}
