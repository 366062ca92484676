/**
 * Estimated average glucose beside a laboratory A1C, mg/dL: ADAG, Nathan 2008, Diabetes Care 31:1473-1478, doi
 * 10.2337/dc08-0545. One way only: a sensor mean is never turned into an A1C with it (that is what GMI is for).
 */
export function eagOf(a1cPercent: number): number {
  return 28.7 * a1cPercent - 46.7;
}

/** A1C in mmol/mol (IFCC) from percent (NGSP): the NGSP's master equation, ngsp.org. */
export function ifccOf(ngspPercent: number): number {
  return (ngspPercent - 2.152) / 0.09148;
}

/** A1C in percent (NGSP) from mmol/mol (IFCC). For a difference use the slope alone. */
export function ngspOf(ifccMmolPerMol: number): number {
  return 0.09148 * ifccMmolPerMol + 2.152;
}
