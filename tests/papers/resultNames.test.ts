import { expect, test } from 'vitest';
import { isResultName, resultName, snapshotDay } from '../../src/papers/resultNames.ts';

test('results are known by their names, and so is the day of a snapshot', () => {
  const snapshot = resultName('P-17', 'snapshot', '2026-05-10');
  expect(snapshot).toBe('P-17-snapshot-2026-05-10.json');
  expect(snapshotDay(snapshot)).toBe('2026-05-10');
  expect(resultName('P-17', 'fhir', '2026-05-10')).toBe('P-17-cgm.fhir.json');
  for (const what of ['clinicPage', 'interpretation', 'analysis', 'snapshot', 'setAside', 'fhir'] as const) {
    expect(isResultName(resultName('P-17', what, '2026-05-10'))).toBe(true);
  }
  for (const name of ['P-17.json', 'analysis.json', 'P-17-snapshot-last.json', 'P-17-analysisXjson', 'x-cgm.json']) {
    expect([name, isResultName(name), snapshotDay(name)]).toEqual([name, false, undefined]);
  }
});
