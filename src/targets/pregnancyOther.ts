import type { TargetSet } from '../model/targets.ts';

/** Pregnancy with type 2 or gestational diabetes: the paper prints the range and leaves the shares open. */
export const pregnancyOther: TargetSet = {
  id: 'pregnancy-other',
  source: 'Battelino 2019, Diabetes Care 42:1593-1603, doi 10.2337/dci19-0028, table 4',
  limits: {
    'mg/dL': { veryLow: 54, low: 63, high: 140, veryHigh: null },
    'mmol/L': { veryLow: 3.0, low: 3.5, high: 7.8, veryHigh: null },
  },
  goals: [],
  cvLimit: null,
  gmi: false,
};
