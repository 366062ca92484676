/** The part of the units library that tests use; it ships no types. */
declare module '@lhncbc/ucum-lhc' {
  export const UcumLhcUtils: {
    getInstance(): {
      convertUnitTo(from: string, value: number, to: string, options?: { molecularWeight?: number }): unknown;
      validateUnitString(code: string): unknown;
    };
  };
}
