import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';

export const home = fileURLToPath(new URL('../..', import.meta.url));
export const command = join(home, 'dist/daybands.js');

/** A folder of its own for one test, gone when the test ends. */
export function scratch(files: Record<string, string | Uint8Array> = {}): string {
  const folder = mkdtempSync(join(tmpdir(), 'daybands-cli-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [name, content] of Object.entries(files)) writeFileSync(join(folder, name), content);
  return folder;
}

export interface Ran {
  exit: number | null;
  out: string;
  err: string;
}

/** Starts the built command in `folder`. */
export function run(folder: string, args: string[], env: Record<string, string> = {}): Ran {
  const ran = spawnSync(process.execPath, [command, ...args], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, TZ: 'UTC', ...env },
    timeout: 60_000,
  });
  return { exit: ran.status, out: ran.stdout, err: ran.stderr };
}

/** Names in a folder, hidden ones too; none when it is not there. */
export function listed(folder: string): string[] {
  try {
    return readdirSync(folder).sort();
  } catch {
    return [];
  }
}

/** Lines of a plain export: `days` days with a reading every five minutes. */
export function plainExport(days = 15, unit = 'mg/dL', value = (i: number): string | number => 110 + (i % 60)): string {
  const lines = [`Time,Sensor glucose (${unit})`];
  for (let i = 0; i < days * 288; i++) {
    const at = new Date(Date.UTC(2026, 2, 2) + i * 300_000).toISOString().slice(0, 16).replace('T', ' ');
    lines.push(`${at},${value(i)}`);
  }
  return `${lines.join('\n')}\n`;
}
