import type { TargetSet } from '../model/targets.ts';

/** Pregnancy with type 1 diabetes. The paper says that these shares rest on limited evidence. */
export const pregnancyType1: TargetSet = {
  id: 'pregnancy-type-1',
  source: 'Battelino 2019, Diabetes Care 42:1593-1603, doi 10.2337/dci19-0028, table 4',
  limits: {
    'mg/dL': { veryLow: 54, low: 63, high: 140, veryHigh: null },
    'mmol/L': { veryLow: 3.0, low: 3.5, high: 7.8, veryHigh: null },
  },
  goals: [
    { of: 'very-low', op: '<', share: 0.01 },
    { of: 'low', op: '<', share: 0.04 },
    { of: 'in-range', op: '>', share: 0.7 },
    { of: 'high', op: '<', share: 0.25 },
  ],
  cvLimit: null,
  gmi: false,
};
