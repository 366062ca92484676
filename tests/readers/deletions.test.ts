import { describe, expect, it } from 'vitest';
import { readInputs } from '../../src/readers/index.ts';
import { buildTimeline } from '../../src/timeline/index.ts';
import { TODAY } from './digest.ts';

// HL7 Bulk Data Access, "deleted" of the manifest: files of transaction Bundles whose entries hold `request.method`
// DELETE and `request.url`; the receiver takes those records out.
const bytes = (...values: unknown[]) =>
  new TextEncoder().encode(values.map((value) => JSON.stringify(value)).join('\n'));
const observation = (id: string, minute: number, lastUpdated?: string) => ({
  resourceType: 'Observation',
  id,
  ...(lastUpdated ? { meta: { lastUpdated } } : {}),
  status: 'final',
  code: { coding: [{ system: 'http://loinc.org', code: '99504-3' }] },
  effectiveDateTime: `2026-01-14T08:${String(minute).padStart(2, '0')}:00+02:00`,
  valueQuantity: { value: 100 + minute, system: 'http://unitsofmeasure.org', code: 'mg/dL' },
});
const takenBack = (urls: string[], more: object = {}) => ({
  resourceType: 'Bundle',
  type: 'transaction',
  ...more,
  entry: urls.map((url) => ({ request: { method: 'DELETE', url } })),
});
const readings = {
  name: 'Observation.ndjson',
  bytes: bytes(observation('a', 0), observation('b', 5, '2026-01-20T00:00:00Z'), observation('c', 10)),
};
const read = (...inputs: { name: string; bytes: Uint8Array }[]) => readInputs(inputs, { today: TODAY });

describe('records taken back', () => {
  it('are set aside with that reason, whichever file comes first, and the rows add up', () => {
    const deleted = { name: 'del.ndjson', bytes: bytes(takenBack(['Observation/a']), takenBack(['Observation/x'])) };
    for (const files of [read(readings, deleted), read(deleted, readings).toReversed()]) {
      expect(files[0]!.fates).toEqual(['set-aside', 'used', 'used']);
      expect(files[0]!.faults).toEqual([{ line: 1, code: 'taken-back', actual: 'Observation/a' }]);
      expect(files[1]!.fates).toEqual(['ignored', 'ignored']);
      expect(files[1]!.issues).toEqual([{ code: 'export-deletions', level: 'note', count: 2 }]);
      const { total, setAside } = buildTimeline(files, {});
      expect(total).toMatchObject({ rows: 5, used: 2, setAside: 1, ignored: 2 });
      expect(setAside).toMatchObject([{ file: 'Observation.ndjson', line: 1, code: 'taken-back' }]);
    }
  });

  it('stay when they were written again after that', () => {
    const at = (lastUpdated: string) => ({
      name: 'del.json',
      bytes: bytes(takenBack(['Observation/b'], { meta: { lastUpdated } })),
    });
    expect(read(readings, at('2026-01-19T00:00:00Z'))[0]!.fates).toEqual(['used', 'used', 'used']);
    expect(read(readings, at('2026-01-21T00:00:00Z'))[0]!.fates).toEqual(['used', 'set-aside', 'used']);
  });

  it('are named in the same Bundle, by a whole address, or not at all', () => {
    const entry = [{ resource: observation('a', 0) }, ...takenBack(['https://one.example/fhir/Observation/a']).entry];
    const [both] = read({ name: 'a.json', bytes: bytes({ ...takenBack([]), entry }) });
    expect(both!.fates).toEqual(['set-aside', 'ignored']);
    const [search] = read({ name: 'a.json', bytes: bytes(takenBack(['Observation?code=x'])) });
    expect(search!.fates).toEqual(['set-aside']);
    expect(search!.issues).toMatchObject([{ code: 'element-unknown', level: 'warning' }]);
  });

  it('cannot be left out without the list that the manifest names', () => {
    const manifest = {
      name: 'manifest.json',
      bytes: bytes({
        transactionTime: '2026-02-01T00:00:00Z',
        request: 'https://one.example/$export',
        output: [{ type: 'Observation', url: 'https://one.example/Observation.ndjson', count: 3 }],
        deleted: [{ type: 'Bundle', url: 'https://one.example/del.ndjson', count: 1 }],
        error: [],
      }),
    };
    expect(read(manifest, readings)[0]!.issues).toMatchObject([{ code: 'export-file-missing', actual: 'del.ndjson' }]);
    const deleted = { name: 'del.ndjson', bytes: bytes(takenBack(['Observation/c'])) };
    const files = read(manifest, readings, deleted);
    expect(files[0]!.issues).toEqual([]);
    expect(files[1]!.fates).toEqual(['used', 'used', 'set-aside']);
  });
});
