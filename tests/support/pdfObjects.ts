import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { run } from './tools.ts';

/** A PDF object as qpdf tells it: names start with `/`, strings with `u:` or `b:`, references look like `12 0 R`. */
export type Value = null | boolean | number | string | Value[] | Dict;
export interface Dict {
  [name: string]: Value;
}

/** A file as qpdf sees it, apart from the code that wrote it. Streams come decoded. */
export interface Objects {
  trailer: Dict;
  root: Dict;
  /** Follows a reference; anything else is handed back. */
  at(value: Value | undefined): Value;
  dict(value: Value | undefined): Dict;
  list(value: Value | undefined): Value[];
  stream(value: Value | undefined): Buffer;
  pages: { id: string; page: Dict }[];
}

const REFERENCE = /^\d+ \d+ R$/;

export function readObjects(bytes: Uint8Array): Objects {
  const folder = mkdtempSync(join(tmpdir(), 'daybands-objects-'));
  const file = join(folder, 'a.pdf');
  writeFileSync(file, bytes);
  const text = run('qpdf', ['--json=2', '--json-stream-data=inline', '--decode-level=generalized', file]);
  rmSync(folder, { recursive: true });
  type Entry = { value?: Value; stream?: { dict: Dict; data: string } };
  const { qpdf, pages } = JSON.parse(text) as { qpdf: [unknown, Record<string, Entry>]; pages: { object: string }[] };
  const entry = (value: Value | undefined): Entry | undefined =>
    typeof value === 'string' && REFERENCE.test(value) ? qpdf[1][`obj:${value}`] : undefined;
  const at = (value: Value | undefined): Value => {
    const found = entry(value);
    if (found) return found.stream?.dict ?? found.value ?? null;
    return value ?? null;
  };
  const dict = (value: Value | undefined): Dict => {
    const it = at(value);
    return it !== null && typeof it === 'object' && !Array.isArray(it) ? it : {};
  };
  const list = (value: Value | undefined): Value[] => {
    const it = at(value);
    return Array.isArray(it) ? it : it === null ? [] : [value as Value];
  };
  const trailer = dict(qpdf[1].trailer?.value);
  return {
    trailer,
    root: dict(trailer['/Root']),
    at,
    dict,
    list,
    stream: (value) => Buffer.from(entry(value)?.stream?.data ?? '', 'base64'),
    pages: pages.map(({ object }) => ({ id: object, page: dict(object) })),
  };
}

/** A text string without qpdf's mark; undefined where there is none. */
export const textOf = (value: Value | undefined): string | undefined =>
  typeof value === 'string' && value.startsWith('u:') ? value.slice(2) : undefined;
