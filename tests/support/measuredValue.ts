import type { Measured } from '../../src/model/measured.ts';

/** The value of something that was measured. @throws when it was not. */
export function measuredValue<T>(measured: Measured<T>): T {
  if (!measured.ok) throw new Error(measured.why);
  return measured.value;
}
