/** Glucose in mg/dL, the unit inside. Made only by units.ts; never NaN. */
export type MgPerDl = number & { readonly unit: 'mg/dL' };

/**
 * Milliseconds since 1970-01-01T00:00Z. Where the inputs gave neither a zone nor offsets, the local clock is taken as
 * written, as if it were UTC, so differences and local days still come out right.
 */
export type Instant = number & { readonly unit: 'ms' };

/** A calendar day of the wearer, `YYYY-MM-DD`. */
export type LocalDate = string & { readonly form: 'YYYY-MM-DD' };

/** The two units glucose is exported in. A reading keeps its native unit and is classified in it. */
export type GlucoseUnit = 'mg/dL' | 'mmol/L';
