import { expect, test } from 'vitest';
import { isResultName, resultName, visitDay } from '../../src/papers/resultNames.ts';

test('results are known by their names, and so is the day of a visit file, by its older name too', () => {
  const visit = resultName('P-17', 'visit', '2026-05-10');
  expect(visit).toBe('P-17-visit-2026-05-10.json');
  for (const name of [visit, 'P-17-snapshot-2026-05-10.json'])
    expect([visitDay(name), isResultName(name)]).toEqual(['2026-05-10', true]);
  expect(resultName('P-17', 'fhir', '2026-05-10')).toBe('P-17-cgm.fhir.json');
  for (const what of ['clinicPage', 'interpretation', 'analysis', 'visit', 'setAside', 'fhir'] as const) {
    expect(isResultName(resultName('P-17', what, '2026-05-10'))).toBe(true);
  }
  for (const name of ['P-17.json', 'analysis.json', 'P-17-snapshot-last.json', 'P-17-analysisXjson', 'x-cgm.json']) {
    expect([name, isResultName(name), visitDay(name)]).toEqual([name, false, undefined]);
  }
});
