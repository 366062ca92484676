import { latin1 } from '../../bytes/text.ts';
import type { Choice, Input, ReadFile, ReadSettings } from '../../model/input.ts';
import { accountOf } from '../account.ts';
import { openBook } from '../book.ts';
import { newEntries } from '../entries.ts';
import { comesOften } from '../glucose/density.ts';
import { type JsonText, walk } from '../json/elements.ts';
import { type Json, listIn, objectIn, textIn } from '../json/fields.ts';
import { openJson } from '../json/jsonText.ts';
import { activity, dose, glucose, type Point, type Points, push } from './bodies.ts';

/** Data points of Open mHealth and IEEE 1752.1 name their schema in every header. */
export function recogniseOpenMhealth(head: Uint8Array): number {
  return /^\W{0,8}[[{]/.test(latin1(head, 0, 9)) && /"schema_id"\s*:/.test(latin1(head, 0, 8192)) ? 0.9 : 0;
}

/** Reads data points as a JSON array, one object or one a line; a series shares one header. */
export function readOpenMhealth(input: Input, settings: ReadSettings): ReadFile {
  const choices: Choice[] = [{ id: 'encoding', value: 'utf-8', by: 'file', evidence: { is: 'json' } }];
  const opened = openJson(input.bytes);
  let all = newPoints(input, settings);
  const { brokenAt } = 'brokenAt' in opened ? opened : readPoints(all, opened);
  if (brokenAt > 0) {
    // What stood before the fault is worth nothing by itself.
    all = newPoints(input, settings);
    all.book.add('json-broken', 'refusal', brokenAt);
  }
  const { book } = all;
  settleUnsure(all, choices);
  for (const [what, count] of all.ignored) book.add('schema-ignored', 'note', 0, { actual: what, count });
  if (all.endless > 0) book.add('interval-without-end', 'note', 0, { count: all.endless });
  if (all.naive > 0) {
    choices.push({
      id: 'clock',
      value: 'utc',
      by: 'default',
      evidence: { is: 'times-without-offset', count: all.naive },
    });
    book.add('no-offset-means-utc', 'note', 0, { count: all.naive });
  }
  if (all.written && settings.unit) {
    const { unit, line } = all.written;
    book.add('unit-coded', 'refusal', line, { actual: unit, expected: settings.unit, question: { of: 'unit' } });
  }
  if (settings.zone) choices.push({ id: 'zone', value: settings.zone, by: 'user' });
  return accountOf(input, 'open-mhealth', { ...all, choices });
}

function newPoints({ name }: Input, { today, unit }: ReadSettings): Points {
  const found = { persons: new Set<string>(), ignored: new Map<string, number>(), unsure: [], written: undefined };
  return { file: name, today, unit, book: openBook(name), entries: newEntries(0, 0), naive: 0, endless: 0, ...found };
}

/** Reads the points as they come, so that only one is held at a time. */
function readPoints(all: Points, opened: JsonText): { brokenAt: number } {
  const { book, entries } = all;
  const { brokenAt, broken } = walk(opened, opened.elements, (value, i) => {
    const line = opened.elements.line(i);
    const header = objectIn(value, 'header');
    const bodies = header ? bodiesOf(value) : [];
    for (const body of bodies) readPoint(all, { header: header!, body, line, row: entries.fates.push('ignored') - 1 });
    if (bodies.length > 0) return;
    book.add('element-unknown', 'warning', line);
    entries.fates.push('set-aside');
  });
  for (const line of broken) {
    book.add('json-line-broken', 'warning', line);
    entries.fates.push('set-aside');
  }
  return { brokenAt };
}

/** One body, an array of them, or an object whose only array holds them. */
function bodiesOf(value: unknown): Json[] {
  const list = listIn(value, 'body');
  const body = objectIn(value, 'body');
  const only = body ? Object.values(body).filter(Array.isArray) : [];
  const many =
    list.length > 0 ? list : only.length === 1 && Object.keys(body ?? {}).length === 1 ? (only[0] as unknown[]) : [];
  if (many.length > 0) return many.map((one) => objectIn(one)).filter((one) => one !== undefined);
  return body ? [body] : [];
}

function readPoint(all: Points, point: Point): void {
  const schema = objectIn(point.header, 'schema_id');
  const name = textIn(schema, 'name');
  const person = textIn(point.header, 'user_id');
  if (person !== '' && all.persons.size < 1000) all.persons.add(person);
  const known = ['omh', 'ieee', 'ieee1752', ''].includes(textIn(schema, 'namespace'));
  if (known && (name === 'blood-glucose' || objectIn(point.body, 'blood_glucose'))) glucose(all, point);
  else if (known && name === 'physical-activity') activity(all, point);
  else if (known && /^single-medication-dose-taken$/.test(name)) dose(all, point);
  else {
    const what = [textIn(schema, 'namespace'), name, String(schema?.version ?? '')]
      .filter((part) => part !== '')
      .join(':');
    all.ignored.set(what, (all.ignored.get(what) ?? 0) + 1);
  }
}

function settleUnsure(all: Points, choices: Choice[]): void {
  if (all.unsure.length === 0) return;
  const sensor = comesOften(all.unsure, choices);
  for (const { wall, offset, value, mmol, point } of all.unsure) {
    if (sensor) all.entries.reading(wall, offset, value, mmol ? 1 : 0, 0, point.line, point.row);
    else {
      const origin = { file: all.file, line: point.line };
      push(all, {
        wall,
        offset,
        timed: true,
        kind: 'fingerstick',
        amount: value,
        unit: mmol ? 'mmol/L' : 'mg/dL',
        origin,
        row: point.row,
      });
    }
  }
}
