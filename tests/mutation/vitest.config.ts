import { defineConfig } from 'vitest/config';

/**
 * The tests whose task it is to notice a fault in units, timeline, measures or findings. One time zone is enough, and
 * files share their modules: each mutant runs these tests again.
 */
export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  test: {
    env: { TZ: 'UTC' },
    include: ['tests/units.test.ts', 'tests/{timeline,measures,findings,targets}/*.test.ts'],
    setupFiles: ['tests/support/seed.ts', 'tests/mutation/fewer.ts'],
    isolate: false,
    testTimeout: 60_000,
  },
});
