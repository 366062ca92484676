import { defineConfig } from 'vitest/config';

/** Nothing may notice in which time zone the machine stands, so the suite runs under each of these. */
const zones = { utc: 'UTC', auckland: 'Pacific/Auckland' };
const testTimeout = 30_000;

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    projects: [
      ...Object.entries(zones).map(([name, TZ]) => ({
        extends: true as const,
        test: { name, env: { TZ }, include: ['tests/**/*.test.ts'], exclude: ['tests/cli/**'], testTimeout },
      })),
      // The built command, started as people start it; it sets the zones of its own processes.
      {
        extends: true as const,
        test: {
          name: 'command',
          include: ['tests/cli/**/*.test.ts'],
          globalSetup: 'tests/support/freshBuild.ts',
          testTimeout,
        },
      },
    ],
  },
});
