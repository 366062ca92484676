import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayOf24, type Speaker, type Style, spokenMinutes, stackedTenths } from '../../src/language/index.ts';
import type { BandMinutes } from '../../src/model/measures.ts';
import type { Quantity } from '../../src/model/quantity.ts';
import { BANDS } from '../../src/targets/bands.ts';
import { englishSpeaker } from '../support/english.ts';

const clinic = englishSpeaker('clinic');
const clinicMmol = englishSpeaker('clinic', 'mmol/L');
const patient = englishSpeaker('patient');
const patientMmol = englishSpeaker('patient', 'mmol/L');

/** No-break spaces keep a number with its unit; the tables below read easier without them. */
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

type Case = [quantity: object, expected: string, style?: Style];

function check(speaker: Speaker, cases: Case[]): void {
  test.each(cases.map(([quantity, expected, style]) => [JSON.stringify(quantity), expected, quantity, style] as const))(
    '%s is "%s"',
    (_, expected, quantity, style) => {
      expect(plain(speaker.value(quantity as Quantity, style))).toBe(expected);
    },
  );
}

describe('shares in the clinic: percent, one decimal below 10, whole above, never 0 for something', () => {
  check(clinic, [
    [{ q: 'share', value: 0 }, '0 %'],
    [{ q: 'share', value: 0.0001 }, '< 0.1 %'],
    [{ q: 'share', value: 0.00049 }, '< 0.1 %'],
    [{ q: 'share', value: 0.0005 }, '0.1 %'],
    [{ q: 'share', value: 0.004 }, '0.4 %'],
    [{ q: 'share', value: 0.0494 }, '4.9 %'],
    [{ q: 'share', value: 0.04 }, '4 %'],
    [{ q: 'share', value: 0.0994 }, '9.9 %'],
    [{ q: 'share', value: 0.0996 }, '10 %'],
    [{ q: 'share', value: 0.705 }, '71 %'],
    [{ q: 'share', value: 0.9996 }, '99.9 %'],
    [{ q: 'share', value: 1 }, '100 %'],
  ]);
});

/** Day equivalents as printed in the target tables: 1 %, 4 %, 5 %, 25 %, 70 % of 24 hours. */
describe('shares on the patient paper: time a day', () => {
  check(patient, [
    [{ q: 'share', value: 0 }, '0 minutes'],
    [{ q: 'share', value: 0.0001 }, 'less than 1 minute'],
    [{ q: 'share', value: 0.001 }, '1 minute'],
    [{ q: 'share', value: 0.01 }, '15 minutes'],
    [{ q: 'share', value: 0.04 }, '1 hour'],
    [{ q: 'share', value: 0.05 }, '1 hour and 10 minutes'],
    [{ q: 'share', value: 0.25 }, '6 hours'],
    [{ q: 'share', value: 0.7 }, '17 hours'],
    [{ q: 'share', value: 0.999 }, '23 hours and 59 minutes'],
    [{ q: 'share', value: 1 }, '24 hours'],
  ]);
});

describe('minutes', () => {
  check(clinic, [
    [{ q: 'minutes', value: 0 }, '0 min'],
    [{ q: 'minutes', value: 0.3 }, '< 1 min'],
    [{ q: 'minutes', value: 0.3 }, 'less than 1 minute', 'long'],
    [{ q: 'minutes', value: 55 }, '55 min'],
    [{ q: 'minutes', value: 59.6 }, '1 h'],
    [{ q: 'minutes', value: 72 }, '1 h 12 min'],
    [{ q: 'minutes', value: 72 }, '1 hour and 12 minutes', 'long'],
    [{ q: 'minutes', value: 18_360 }, '306 h'],
    [{ q: 'minutes', value: 100_000 }, '1,667 h'],
  ]);
  check(patient, [
    [{ q: 'minutes', value: 1 }, '1 minute'],
    [{ q: 'minutes', value: 61 }, '1 hour and 1 minute'],
    [{ q: 'minutes', value: 70 }, '1 hour and 10 minutes'],
    [{ q: 'minutes', value: 70 }, '1 h 10 min', 'short'],
  ]);
});

describe('glucose, limits and differences', () => {
  check(clinic, [
    [{ q: 'glucose', value: 162.6 }, '163 mg/dL'],
    [{ q: 'glucose', value: 162.6 }, '163', 'short'],
    [{ q: 'glucose', value: 40, limit: -1 }, 'below 40 mg/dL'],
    [{ q: 'glucose', value: 400, limit: 1 }, 'above 400 mg/dL'],
    [{ q: 'glucose', value: Number.NaN, limit: -1 }, 'below what the sensor can show'],
    [{ q: 'limit', of: 'low' }, '70 mg/dL'],
    [{ q: 'rise', value: 32.4 }, '32 mg/dL'],
    [{ q: 'rise', value: -32.4 }, '\u221232 mg/dL'],
    [{ q: 'rise', value: -0.2 }, '0 mg/dL'],
  ]);
  check(clinicMmol, [
    [{ q: 'glucose', value: 180.156 }, '10.0 mmol/L'],
    // 70 / 18.0156 is 3.886: the published pair is spoken, not the converted number.
    [{ q: 'limit', of: 'very-low' }, '3.0 mmol/L'],
    [{ q: 'limit', of: 'low' }, '3.9 mmol/L'],
    [{ q: 'limit', of: 'high' }, '10.0 mmol/L'],
    [{ q: 'limit', of: 'very-high' }, '13.9 mmol/L'],
    [{ q: 'rise', value: -32.4 }, '\u22121.8 mmol/L'],
  ]);
  check(patient, [
    [{ q: 'glucose', value: 162.6 }, '163'],
    [{ q: 'glucose', value: 40, limit: -1 }, 'below 40'],
    [{ q: 'limit', of: 'low' }, '70'],
    [{ q: 'limit', of: 'low' }, '70 mg/dL', 'long'],
  ]);
  check(patientMmol, [[{ q: 'limit', of: 'low' }, '3.9']]);
});

describe('clock and dates', () => {
  check(clinic, [
    [{ q: 'clock', value: 0 }, 'midnight'],
    [{ q: 'clock', value: 1440 }, 'midnight'],
    [{ q: 'clock', value: 720 }, 'noon'],
    [{ q: 'clock', value: 160 }, '2:40 AM'],
    [{ q: 'clock', value: 360 }, '6 AM'],
    [{ q: 'clock', value: 1439 }, '11:59 PM'],
    [{ q: 'date', value: '2024-06-04' }, 'Tue, June 4'],
    [{ q: 'date', value: '2024-06-04' }, 'Tuesday, June 4, 2024', 'full'],
    [{ q: 'date', value: '2024-06-04' }, 'Jun 4', 'compact'],
    [{ q: 'date', value: '2024-06-04' }, 'Tue', 'weekday'],
    [{ q: 'dates', value: ['2024-06-04'] }, 'June 4'],
    [{ q: 'dates', value: ['2024-06-04', '2024-06-09', '2024-06-10'] }, 'June 4, June 9, and June 10'],
  ]);
  check(patient, [[{ q: 'date', value: '2024-06-04' }, 'Tuesday, June 4']]);
});

describe('estimates', () => {
  const value = { value: 0.049, low: 0.028, high: 0.076, level: 0.95, method: 'whole-day-resampling', days: 13 };
  const none = { ...value, low: null, high: null };
  check(clinic, [
    [{ q: 'estimate', as: 'share', value }, '4.9 % (95 % interval 2.8 to 7.6)'],
    [{ q: 'estimate', as: 'share', value: none }, '4.9 %'],
    [
      { q: 'estimate', as: 'glucose', value: { ...value, value: 149, low: 128, high: 176 } },
      '149 mg/dL (95 % interval 128 to 176)',
    ],
  ]);
  check(patient, [
    [
      { q: 'estimate', as: 'share', value },
      '1 hour and 10 minutes (it could be as low as 40 minutes or as high as 1 hour and 50 minutes)',
    ],
  ]);
});

describe('how often: the word has a fixed meaning and never stands alone', () => {
  const often = (k: number, n: number): Quantity => ({ q: 'often', k, n, of: 'nights' });
  check(clinic, [
    [often(13, 13), 'every night (13 of 13)'],
    [often(9, 13), 'most nights (9 of 13)'],
    [often(6, 9), 'most nights (6 of 9)'],
    [often(7, 13), 'about half of the nights (7 of 13)'],
    [often(6, 15), 'some nights (6 of 15)'],
    [often(9, 14), 'over half of the nights (9 of 14)'],
    [often(9, 15), 'over half of the nights (9 of 15)'],
    [often(89, 149), 'about half of the nights (89 of 149)'],
    [often(3, 9), 'some nights (3 of 9)'],
    [often(2, 13), 'a few nights (2 of 13)'],
    [often(1, 13), '1 of 13 nights'],
    [often(5, 5), '5 of 5 nights'],
    [often(4, 6), '4 of 6 nights'],
    [often(1, 1), '1 of 1 night'],
  ]);
});

describe('a share beside a goal never contradicts the verdict', () => {
  test.each([
    [0.6996, 0.7, '69.96 %'],
    [0.7, 0.7, '70 %'],
    [0.699999, 0.7, 'a little under 70 %'],
    [0.7004, 0.7, '70.04 %'],
    [0.72, 0.7, '72 %'],
    [0.0398, 0.04, '3.98 %'],
    [0.04001, 0.04, 'a little over 4 %'],
    [0.361, 0.36, '36.1 %'],
    [0.0002, 0.01, '< 0.1 %'],
  ])('%d beside %d is "%s"', (share, goal, expected) => {
    expect(plain(clinic.against(share, { share: goal }))).toBe(expected);
    expect(plain(clinic.value({ q: 'share', value: share, goal: goal }))).toBe(expected);
  });

  test('goals are spoken without decimals they do not have', () => {
    expect(plain(clinic.goal({ op: '<', share: 0.04 }))).toBe('below 4 %');
    expect(plain(clinic.goal({ op: '>', share: 0.7 }))).toBe('above 70 %');
    expect(patient.goal({ op: '>', share: 0.5 })).toBe('more than 12\u00a0hours a day');
  });

  test('any share and goal', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, fc.integer({ min: 1, max: 99 }), (value, percent) => {
        const text = plain(clinic.against(value, { share: percent / 100 }));
        const printed = Number(/^[\d.]+/.exec(text)?.[0]);
        if (Number.isNaN(printed) || Math.abs(value * 100 - percent) < 1e-9) return;
        expect(printed < percent).toBe(value * 100 < percent);
        expect(printed === percent).toBe(false);
      }),
    );
  });
});

describe('five bands that add up', () => {
  const minutes = fc.oneof(fc.constant(0), fc.double({ min: 0, max: 30_000, noNaN: true }));
  const bands = fc
    .tuple(minutes, minutes, minutes, minutes, minutes)
    .filter((all) => all.some((one) => one > 0))
    .map((all) => Object.fromEntries(BANDS.map((band, i) => [band, all[i]])) as BandMinutes);

  test('percentages sum to 100, times to 24 hours, and nothing empty is shown', () => {
    fc.assert(
      fc.property(bands, (given) => {
        const tenths = stackedTenths(given);
        const day = dayOf24(given);
        const sum = (of: BandMinutes) => BANDS.reduce((total, band) => total + of[band], 0);
        expect(sum(tenths)).toBe(1000);
        expect(sum(day)).toBe(1440);
        for (const band of BANDS) {
          expect(tenths[band]).toBeGreaterThanOrEqual(0);
          expect(day[band]).toBeGreaterThanOrEqual(0);
          if (given[band] === 0) expect([tenths[band], day[band]]).toEqual([0, 0]);
          else for (const each of [clinic, patient]) expect(each.stack(given)[band]).not.toMatch(/^0(\.0)?\s/);
        }
      }),
    );
  });

  test('a day as a person hears it', () => {
    const texts = patient.stack({ 'very-low': 2, low: 130, 'in-range': 14_000, high: 4_000, 'very-high': 333.5 });
    expect(texts).toEqual({
      'very-low': 'less than 1\u00a0minute',
      low: '10\u00a0minutes',
      'in-range': '18\u00a0hours and 10\u00a0minutes',
      high: '5\u00a0hours and 15\u00a0minutes',
      'very-high': '25\u00a0minutes',
    });
  });

  test('without readings there is nothing to add', () => {
    const none = { 'very-low': 0, low: 0, 'in-range': 0, high: 0, 'very-high': 0 };
    expect(stackedTenths(none)).toEqual(none);
    expect(dayOf24(none)).toEqual(none);
  });

  test.each([
    [9.4, 9],
    [11, 10],
    [58, 60],
    [182, 180],
    [190, 195],
    [616, 630],
  ])('%d minutes are spoken as %d', (exact, spoken) => {
    expect(spokenMinutes(exact)).toBe(spoken);
  });
});
