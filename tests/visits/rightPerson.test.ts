import { describe, expect, test } from 'vitest';
import type { Analysis, Refusal } from '../../src/analyse.ts';
import { analysed, comparedWith, exported, held, leftBy } from '../support/visiting.ts';

const ann = { seed: 1 };
const ben = { seed: 2.3 };
const then = leftBy(exported(ann, 0, 14), { person: { code: 'P-1', clinic: 'Invented clinic' } });
const codes = (found: Analysis | Refusal) => found.issues.map(({ code }) => code).filter((code) => /visit/.test(code));
const now = (text: string, code?: string) => analysed(text, { ...comparedWith(then), person: code ? { code } : {} });

describe('a file of another person is refused', () => {
  test('by another code', () => {
    const found = now(exported(ann, 20, 34), 'P-2');
    expect([found.ok, codes(found)]).toEqual([false, ['visit-other-code']]);
    expect(found.issues[0]).toMatchObject({ origin: { file: then.file }, actual: 'P-1', expected: 'P-2' });
  });

  test('by days in both that these readings give otherwise', () => {
    const found = now(exported(ben, 7, 21));
    expect([found.ok, codes(found)]).toEqual([false, ['visit-other-days']]);
  });

  test('also where the days in both lie before the period', () => {
    expect(now(exported(ben, 7, 40)).ok).toBe(false);
  });

  test('whichever of several it is', () => {
    const other = leftBy(exported(ben, 14, 21));
    const found = analysed(exported(ann, 10, 40), comparedWith(then, other));
    expect([found.ok, codes(found)]).toEqual([false, ['visit-other-days']]);
  });
});

describe('the same person is let in', () => {
  const lastTime = (found: Analysis | Refusal) => {
    const { lastTime } = held(found).measures;
    return lastTime.ok ? lastTime.value : null;
  };

  test('by the same code, without days in both: somebody has to look', () => {
    expect(lastTime(now(exported(ann, 20, 34), 'P-1'))).toMatchObject({ proved: false, person: { code: 'P-1' } });
  });

  test('by a code that differs in signs nobody sees', () => {
    expect(lastTime(now(exported(ann, 20, 34), 'P\u200e-1'))).toMatchObject({ person: { code: 'P-1' } });
  });

  test('without a code on either side', () => {
    expect(lastTime(now(exported(ann, 20, 34)))).toMatchObject({ proved: false });
  });

  test('with days in both that agree, which shows whose it is', () => {
    expect(lastTime(now(exported(ann, 7, 21)))).toMatchObject({ proved: true });
  });

  test('exported in the other unit, which rounds each value by up to 0.9 mg/dL', () => {
    expect(lastTime(now(exported({ ...ann, unit: 'mmol/L' }, 7, 21)))).toMatchObject({ proved: true });
  });

  test('where the first export ended in the middle of a day', () => {
    const early = leftBy(exported(ann, 0, 13.5));
    expect(lastTime(analysed(exported(ann, 7, 21), comparedWith(early)))).toMatchObject({ proved: true });
  });

  test('from a sensor of another interval', () => {
    expect(lastTime(now(exported({ ...ann, every: 15 }, 7, 21)))).toMatchObject({ proved: true });
  });
});
