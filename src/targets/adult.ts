import type { TargetSet } from '../model/targets.ts';

/** Adults with type 1 or type 2 diabetes. Low and high goals are cumulative, as in the paper's figure. */
export const adult: TargetSet = {
  id: 'adult',
  source: 'Battelino 2019, Diabetes Care 42:1593-1603, doi 10.2337/dci19-0028',
  limits: {
    'mg/dL': { veryLow: 54, low: 70, high: 180, veryHigh: 250 },
    'mmol/L': { veryLow: 3.0, low: 3.9, high: 10.0, veryHigh: 13.9 },
  },
  goals: [
    { of: 'very-low', op: '<', share: 0.01 },
    { of: 'low', op: '<', share: 0.04 },
    { of: 'in-range', op: '>', share: 0.7 },
    { of: 'high', op: '<', share: 0.25 },
    { of: 'very-high', op: '<', share: 0.05 },
  ],
  cvLimit: 36,
  gmi: true,
};
