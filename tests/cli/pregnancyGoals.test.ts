import { expect, test } from 'vitest';
import { WrongUse } from '../../src/cli/exits.ts';
import { pregnancyGoalsOf } from '../../src/cli/pregnancyGoals.ts';

test.each([
  ['90/130/115', [90, 130, 115]],
  [' 95 / - / 120 ', [95, null, 120]],
  // mmol/L by their size: 5.0 x 18.0156 and so on, by hand.
  ['5.0/7,2/-', [90.078, 129.71232, null]],
])('%s', (text, expected) => {
  const { fasting, oneHour, twoHours } = pregnancyGoalsOf(text);
  [fasting, oneHour, twoHours].forEach((value, i) => {
    if (expected[i] === null) expect(value).toBeNull();
    else expect(value).toBeCloseTo(expected[i]!, 6);
  });
});

test.each([
  '90/130',
  '90/130/115/110',
  '90/7.2/115',
  '-/-/-',
  '20/130/115',
  '90/130/1150',
  'ninety/130/115',
  '',
  '5,0,7,2',
])('"%s" is refused', (text) => {
  expect(() => pregnancyGoalsOf(text)).toThrow(WrongUse);
});
