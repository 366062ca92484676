import { expect } from 'vitest';
import { unpacked } from '../support/unpacked.ts';

/** Whether the page saved what the command writes: to the byte, and PDFs once unpacked, as packers differ. */
export function expectSame(own: Record<string, Uint8Array>, command: ReadonlyMap<string, Buffer>): void {
  // The record for another system is made by the command for a folder only.
  const names = Object.keys(own).filter((name) => !name.endsWith('.fhir.json'));
  expect(names.sort()).toEqual([...command.keys()].sort());
  for (const name of names) {
    const [here, there] = [Buffer.from(own[name]!), command.get(name)!];
    if (name.endsWith('.pdf')) expect(unpacked(here) === unpacked(there), name).toBe(true);
    else expect(here.equals(there), name).toBe(true);
  }
}
