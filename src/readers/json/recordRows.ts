import { columnOf } from '../table/header.ts';
import { isWhen } from '../table/tables.ts';
import { objectIn } from './fields.ts';

/** Fields of a row by name. */
export type Row = Map<string, string>;

/** Longer texts are pictures and documents, and no remark of anybody's (ours). */
const LONGEST_TEXT = 10_000;
/** How deep objects inside a record are opened. */
const DEEPEST = 4;
/** A date, a time, a clock, or seconds or milliseconds since 1970: said of all that stands below it. */
const TIME =
  /^(?:\d{4}-\d\d-\d\d.*|\d{1,2}[./]\d{1,2}[./]\d{2,4}.*|\d{1,2}[:.h]\d\d(?:[:.]\d\d)?(?:\s?[ap]\.?m\.?)?|\d{10}|\d{13})$/i;

interface Opened {
  fields: Row;
  /** Lists of objects in it, with the names of what they stand in. */
  lists: { name: string; elements: unknown[] }[];
}

/** Fields of an object by name, those of objects inside it too: `glucose value`. A list of plain values is one text. */
export const fieldsOf = (value: unknown): Row => open(value).fields;

function open(value: unknown): Opened {
  const opened: Opened = { fields: new Map(), lists: [] };
  const into = (before: string, object: unknown, depth: number): void => {
    for (const [key, inner] of Object.entries(objectIn(object) ?? {})) {
      const name = before === '' ? key : `${before} ${key}`;
      const text = Array.isArray(inner) ? plainList(inner) : plainText(inner);
      if (text !== undefined) opened.fields.set(name, text);
      else if (Array.isArray(inner)) {
        if (inner.length > 0) opened.lists.push({ name, elements: inner });
      } else if (depth < DEEPEST) into(name, inner, depth + 1);
    }
  };
  into('', value, 1);
  return opened;
}

function plainText(value: unknown): string | undefined {
  if (typeof value === 'string') return value.slice(0, LONGEST_TEXT);
  return typeof value === 'number' || typeof value === 'boolean' ? String(value) : undefined;
}

function plainList(list: unknown[]): string | undefined {
  const texts = list.map(plainText);
  return list.length > 0 && texts.every((text) => text !== undefined)
    ? texts.join(', ').slice(0, LONGEST_TEXT)
    : undefined;
}

/** Seconds or milliseconds since 1970 look like the number of anything: only such names tell them for times. */
const COUNTED = /^\d{10,13}$/;
const OF_TIME = /^(?:t|ts|at)$/i;

/**
 * The names that the times of a row go by, by their own: "t", "hh" and the like above clocks are times. Only the first such, where nothing in
 * the row is called a time: another one keeps its name, and is asked about.
 */
function timeNames(row: Row): Map<string, string> {
  const names = new Map<string, string>();
  let named = [...row].some(([key, text]) => TIME.test(text) && isWhen(columnOf(0, key)));
  for (const [key, text] of row) {
    if (!TIME.test(text)) continue;
    const unknown = columnOf(0, key).role === 'ignore';
    if (unknown && COUNTED.test(text) && !OF_TIME.test(key)) continue;
    names.set(key, unknown && !named ? 'time' : key);
    if (unknown) named = true;
  }
  return names;
}

/**
 * The rows of one record: itself, and one for each entry of the lists inside it. An entry bears the dates and times of what it stands in,
 * and all that is said there, where that is a frame without numbers of its own: a day with its readings, meals and doses.
 */
export function rowsOf(record: unknown, depth = 1): Row[] {
  const { fields, lists } = open(record);
  if (lists.length === 0) return [fields];
  const frame = [...fields.values()].every((text) => TIME.test(text) || !/^[+-]?\d+(?:[.,]\d+)?$/.test(text));
  const said = new Map([...fields].filter(([, text]) => frame || TIME.test(text)));
  const rows = frame ? [] : [fields];
  for (const { name, elements } of lists)
    for (const element of elements) {
      const inside = depth < DEEPEST ? rowsOf(element, depth + 1) : [fieldsOf(element)];
      for (const row of inside) {
        const all = new Map(said);
        // When something was keeps its bare name, so that all lists share it; what it was says of which list it is.
        const times = timeNames(row);
        for (const [key, text] of row) all.set(times.get(key) ?? `${name} ${key}`, text);
        if (row.size > 0) rows.push(all);
      }
    }
  return rows.length > 0 ? rows : [fields];
}
