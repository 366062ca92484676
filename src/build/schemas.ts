import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { published } from '../schemas/published.ts';

/** Writes the schema of every file that others read or write. */
export function keepSchemas(into: string): void {
  mkdirSync(into, { recursive: true });
  for (const [name, schema] of Object.entries(published()))
    writeFileSync(join(into, name), `${JSON.stringify(schema, null, 1)}\n`);
}
