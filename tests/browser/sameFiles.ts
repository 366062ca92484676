import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect } from 'vitest';
import { home, run } from '../cli/run.ts';
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

/** All that the command writes of a folder of one person, by name. */
export function writtenByCommand(folder: string, ...options: string[]): Map<string, Buffer> {
  const out = mkdtempSync(join(tmpdir(), 'daybands-command-'));
  const { exit, err } = run(home, ['report', folder, '--out', out, '--further', '--html', '--snapshot', ...options]);
  expect([exit, err]).toEqual([0, '']);
  const files = new Map(readdirSync(out).map((name) => [name, readFileSync(join(out, name))] as const));
  rmSync(out, { recursive: true });
  return files;
}
