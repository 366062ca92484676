import { describe, expect, it } from 'vitest';
import { buildTimeline } from '../../src/timeline/index.ts';
import { inWords } from '../support/inWords.ts';
import { fileOf, type Row } from '../support/timeline.ts';

const NOON = Date.UTC(2026, 2, 2, 12);
const at = (row: Omit<Row, 'wall'>): Row => ({ wall: NOON, ...row });
/** A reading elsewhere, so that there is always a timeline. */
const other: Row = { wall: NOON + 300_000, native: 90 };

describe('readings at the same instant', () => {
  it.each<[string, Row[], number[], Partial<Record<'used' | 'duplicate' | 'setAside', number>>]>([
    ['same value', [at({ native: 100 }), at({ native: 100 })], [100], { used: 2, duplicate: 1, setAside: 0 }],
    ['other value', [at({ native: 100 }), at({ native: 101 })], [], { used: 1, duplicate: 0, setAside: 2 }],
    [
      'two that agree and one that does not',
      [at({ native: 100 }), at({ native: 101 }), at({ native: 100 })],
      [],
      { used: 1, duplicate: 1, setAside: 2 },
    ],
    [
      'the same in the other unit, rounded',
      [at({ native: 5.6, unit: 'mmol/L' }), at({ native: 100 })],
      [100],
      { used: 2, duplicate: 1, setAside: 0 },
    ],
    [
      'another in the other unit',
      [at({ native: 5.6, unit: 'mmol/L' }), at({ native: 110 })],
      [],
      { used: 1, duplicate: 0, setAside: 2 },
    ],
    // Rounding to 0.1 mmol/L and to 1 mg/dL parts the two by at most 0.05 × 18.0156 + 0.5 = 1.4008 mg/dL (arithmetic):
    // 12.8 mmol/L is 230.5997, 12.9 is 232.4012.
    [
      'the same in the other unit, as far apart as rounding goes',
      [at({ native: 12.8, unit: 'mmol/L' }), at({ native: 232 })],
      [232],
      { used: 2, duplicate: 1, setAside: 0 },
    ],
    [
      'a little further than rounding goes',
      [at({ native: 12.9, unit: 'mmol/L' }), at({ native: 231 })],
      [],
      { used: 1, duplicate: 0, setAside: 2 },
    ],
    [
      'a bound and a plain number at it',
      [at({ native: 40 }), at({ native: 40, limit: -1 })],
      [40],
      { used: 2, duplicate: 1, setAside: 0 },
    ],
    [
      'a bound known and unknown',
      [at({ native: Number.NaN, limit: 1 }), at({ native: 400, limit: 1 })],
      [400],
      { used: 2, duplicate: 1, setAside: 0 },
    ],
    [
      'two unknown bounds of one side',
      [at({ native: Number.NaN, limit: 1 }), at({ native: Number.NaN, limit: 1 })],
      [Number.NaN],
      { used: 2, duplicate: 1, setAside: 0 },
    ],
    [
      'below and above',
      [at({ native: 40, limit: -1 }), at({ native: 400, limit: 1 })],
      [],
      { used: 1, duplicate: 0, setAside: 2 },
    ],
    [
      'below an unknown bound and a plain number',
      [at({ native: Number.NaN, limit: -1 }), at({ native: 50 })],
      [],
      { used: 1, duplicate: 0, setAside: 2 },
    ],
  ])('%s', (_, rows, kept, counts) => {
    for (const order of [rows, rows.toReversed()]) {
      for (const files of [[fileOf([...order, other])], [...order, other].map((row) => fileOf([row]))]) {
        const { timeline, total } = buildTimeline(files, {});
        const { readings } = timeline!;
        expect([...readings.native].filter((_, i) => readings.at[i] === NOON)).toEqual(kept);
        expect(total).toMatchObject(counts);
      }
    }
  });

  it('keeps the bound when a plain number repeats it', () => {
    const { timeline } = buildTimeline([fileOf([at({ native: 40 }), at({ native: 40, limit: -1 })])], {});
    expect([...timeline!.readings.limit]).toEqual([-1]);
  });

  it('names both lines and both values of a contradiction', () => {
    const { issues } = buildTimeline(
      [
        fileOf([at({ native: 104 }), other], [], undefined, 'a.csv'),
        fileOf([at({ native: 98 })], [], undefined, 'b.csv'),
      ],
      {},
    );
    expect(issues.map(inWords)).toEqual([
      {
        code: 'contradiction',
        level: 'warning',
        origin: { file: 'b.csv', line: 2 },
        actual: '98 mg/dL (b.csv:2); 104 mg/dL (a.csv:2)',
      },
    ]);
  });

  it('keeps two readings of one minute apart when their seconds differ', () => {
    const { timeline, total } = buildTimeline(
      [fileOf([at({ native: 100 }), { wall: NOON + 20_000, native: 101 }])],
      {},
    );
    expect(timeline!.readings.count).toBe(2);
    expect(total.used).toBe(2);
  });
});
