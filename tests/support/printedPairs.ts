/** Limits in mg/dL and mmol/L as printed in Battelino 2019 (Diabetes Care 42:1593-1603) and the ADA Standards of Care. */
export const PRINTED_PAIRS: readonly (readonly [mgdl: number, mmol: number])[] = [
  [54, 3.0],
  [63, 3.5],
  [69, 3.8],
  [70, 3.9],
  [80, 4.4],
  [90, 5.0],
  [95, 5.3],
  [100, 5.6],
  [110, 6.1],
  [120, 6.7],
  [126, 7.0],
  [130, 7.2],
  [140, 7.8],
  [150, 8.3],
  [180, 10.0],
  [200, 11.1],
  [250, 13.9],
  [350, 19.4],
];

/** Printed too, but not what the factor gives: 181 / 18.0156 rounds to 10.0. */
export const PRINTED_ABOVE_RANGE = [181, 10.1] as const;
