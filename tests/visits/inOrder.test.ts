import { describe, expect, test } from 'vitest';
import type { Analysis, Refusal } from '../../src/analyse.ts';
import { analysed, comparedWith, exported, held, leftBy } from '../support/visiting.ts';

const ann = { seed: 1 };
const [first, second, third] = [0, 40, 80].map((from) => leftBy(exported(ann, from, from + 14)));
const now = exported(ann, 120, 134);
const rowsOf = (found: Analysis | Refusal) => {
  const { visitByVisit } = held(found).measures;
  return visitByVisit.ok ? visitByVisit.value.rows : [];
};

describe('visits in any order', () => {
  test('stand by their last day, and the last of them is what now is compared with', () => {
    const found = analysed(now, comparedWith(third!, first!, second!));
    expect(rowsOf(found).map(({ from }) => from)).toEqual(['2026-03-02', '2026-04-11', '2026-05-21', '2026-06-30']);
    const { thenAndNow } = held(found).measures;
    expect(thenAndNow.ok && thenAndNow.value.before.from).toBe('2026-05-21');
  });

  test('tell the days between them', () => {
    expect(rowsOf(analysed(now, comparedWith(first!, second!))).map(({ pauseDays }) => pauseDays)).toEqual([
      null,
      26,
      66,
    ]);
  });

  test('one that does not lie before this period is left out and told', () => {
    const found = analysed(exported(ann, 20, 34), comparedWith(first!, second!));
    expect(rowsOf(found)).toHaveLength(2);
    expect(found.issues).toContainEqual(
      expect.objectContaining({ code: 'visit-not-earlier', level: 'note', actual: '2026-04-24' }),
    );
  });

  test('where none lies before it, nothing is compared, and it says so', () => {
    const { measures } = held(analysed(exported(ann, 20, 34), comparedWith(second!)));
    expect([measures.thenAndNow, measures.lastTime]).toEqual([
      { ok: false, why: 'no-earlier-readings' },
      { ok: false, why: 'not-asked' },
    ]);
  });

  test('the same days given twice count once, with what was agreed', () => {
    const agreed = { ...first!, file: 'b.json', agreed: { step: 'a walk' } };
    for (const visits of [
      [first!, agreed],
      [agreed, first!],
    ])
      expect(rowsOf(analysed(now, comparedWith(...visits))).map((row) => row.agreed)).toEqual([
        { step: 'a walk' },
        null,
      ]);
  });

  test('days in two visits count in the later one', () => {
    const long = leftBy(exported(ann, 0, 28), { period: { days: 28 } });
    const found = held(analysed(exported(ann, 14, 42), { ...comparedWith(long), period: { days: 28 } }));
    const { thenAndNow } = found.measures;
    expect(thenAndNow.ok && [thenAndNow.value.sharedDays, thenAndNow.value.before.days]).toEqual([14, 14]);
  });
});

describe('what cannot be compared is told', () => {
  const older = leftBy(exported(ann, 80, 94), { targets: 'older' });
  const fast = leftBy(exported({ ...ann, every: 15 }, 80, 94));
  const mmol = leftBy(exported({ ...ann, unit: 'mmol/L' }, 80, 94));

  test.each([
    ['another target set', older, ['targets']],
    ['another interval', fast, ['interval']],
    ['another unit', mmol, ['unit']],
  ] as const)('%s', (_, visit, differs) => {
    const [row] = rowsOf(analysed(now, comparedWith(visit)));
    expect(row?.differs).toEqual(differs);
  });

  test('another target set: time in bands is not compared, and no line drawn through it', () => {
    const { thenAndNow, visitByVisit } = held(analysed(now, comparedWith(first!, second!, older))).measures;
    const why = thenAndNow.ok && thenAndNow.value.changes.find(({ of }) => of === 'in-range')?.why;
    expect(why).toBe('other-targets');
    expect(visitByVisit.ok && visitByVisit.value.trend.case).toBe('line');
    const few = held(analysed(now, comparedWith(first!, older))).measures.visitByVisit;
    expect(few.ok && few.value.trend).toEqual({ case: 'none', why: 'two-visits' });
  });
});
