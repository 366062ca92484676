import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { listSpeaker, worklistCsv } from '../../src/clinic/lists.ts';
import { MEASURE_COLUMNS, measuresCsv } from '../../src/clinic/table.ts';
import { USUAL } from '../../src/clinic/thresholds.ts';
import { rank } from '../../src/clinic/worklist.ts';
import { english } from '../support/english.ts';
import { facts, outcome } from './outcomes.ts';

const page = readFileSync(new URL('../../docs/clinic.md', import.meta.url), 'utf8');

test.each(MEASURE_COLUMNS.map(({ name }) => [name]))('the column %s is documented', (name) => {
  expect(page).toContain(`\`${name}\``);
});

test('a row a person, also those who could not be read; empty where a number is withheld', () => {
  const lines = rank(
    [
      outcome({ facts: facts({ gmi: null, mean: { mgdl: 180.156, low: null, high: null } }) }),
      outcome({ code: '=1+1', stem: 'x', facts: null, refusals: [{ key: 'clinic.unread.emptyFolder', params: {} }] }),
    ],
    USUAL,
  );
  const rows = parse(measuresCsv(lines), { columns: true }) as Record<string, string>[];
  expect(rows.map(({ code, group }) => [code, group])).toEqual([
    ["'=1+1", 'unread'],
    ['P-1', 'steady'],
  ]);
  // 180.156 g/mol of glucose: 10 mmol/L are 180.156 mg/dL.
  expect(Number(rows[1]!.mean_mmol_per_l)).toBeCloseTo(10, 9);
  expect(rows[1]).toMatchObject({ gmi_percent: '', mean_lower95_mg_per_dl: '', in_range_percent: '100' });
  expect(rows[0]!.mean_mg_per_dl).toBe('');
  // The limits behind the shares, in the unit of the row (Battelino 2019, Diabetes Care 42:1593-1603).
  expect(rows[1]).toMatchObject({
    ...{ native_unit: 'mg/dL', very_low_below: '54', low_below: '70', high_above: '180', very_high_above: '250' },
  });
});

test('the worklist for a spreadsheet runs no formula and leaves the columns of staff empty', () => {
  const mean = outcome({ code: '@SUM(A1)', stem: 'x', inputs: ['=cmd.csv'] });
  const [row] = parse(worklistCsv(rank([mean], USUAL), listSpeaker(english)), { columns: true }) as Record<
    string,
    string
  >[];
  expect(row).toMatchObject({ Code: "'@SUM(A1)", Files: "'=cmd.csv", 'Seen by': '', On: '', Remark: '' });
});
