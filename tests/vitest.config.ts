import { defineConfig } from 'vitest/config';

const zones = { utc: 'UTC', auckland: 'Pacific/Auckland' };

/** The whole suite runs twice: nothing may notice in which time zone the machine stands. */
export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    projects: Object.entries(zones).map(([name, TZ]) => ({
      extends: true as const,
      test: { name, env: { TZ }, include: ['tests/**/*.test.ts'], testTimeout: 30_000 },
    })),
  },
});
