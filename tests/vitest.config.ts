import { defineConfig } from 'vitest/config';

/** Nothing may notice in which time zone the machine stands, so the suite runs under each of these. */
const zones = { utc: 'UTC', auckland: 'Pacific/Auckland' };
/** These start processes of their own, and set the zones of those. */
const once = ['tests/cli/**', 'tests/browser/**', 'tests/reliability/**'];
const testTimeout = 180_000;
const setupFiles = ['tests/support/seed.ts'];

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    projects: [
      ...Object.entries(zones).map(([name, TZ]) => ({
        extends: true as const,
        test: { name, env: { TZ }, include: ['tests/**/*.test.ts'], exclude: [...once], testTimeout, setupFiles },
      })),
      {
        extends: true as const,
        test: {
          name: 'command',
          include: once.map((folder) => `${folder}/*.test.ts`),
          globalSetup: 'tests/support/freshBuild.ts',
          testTimeout,
          setupFiles,
        },
      },
    ],
  },
});
