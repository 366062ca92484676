import type { TargetSet } from '../model/targets.ts';

/**
 * Older people and people at high risk of lows. The table prints no goal below 54 and none above 180; the 50 %
 * above 180 of the paper's figure is left out, as it was not checked against the paper.
 */
export const older: TargetSet = {
  id: 'older',
  source: 'Battelino 2019, Diabetes Care 42:1593-1603, doi 10.2337/dci19-0028',
  limits: {
    'mg/dL': { veryLow: 54, low: 70, high: 180, veryHigh: 250 },
    'mmol/L': { veryLow: 3.0, low: 3.9, high: 10.0, veryHigh: 13.9 },
  },
  goals: [
    { of: 'low', op: '<', share: 0.01 },
    { of: 'in-range', op: '>', share: 0.5 },
    { of: 'very-high', op: '<', share: 0.1 },
  ],
  cvLimit: 36,
  gmi: true,
};
