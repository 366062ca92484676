import { defineConfig } from 'vitest/config';

/**
 * Most tests know no time: they run once, under UTC. What knows time runs a second time on the other side of the world, so
 * that nothing notices in which zone the machine stands.
 */
const KNOWS_TIME = ['time', 'timeline', 'readers', 'measures', 'golden', 'shapes'];
/** These start programs, browsers, a queue's server, or packages of their own, and set the zones of those. */
const STARTS_OTHERS = ['cli', 'browser', 'reliability'];

const within = (rooms: string[]): string[] => rooms.map((room) => `tests/${room}/**/*.test.ts`);
const shared = { testTimeout: 180_000, setupFiles: ['tests/support/seed.ts'] };
/** Nothing below the doors keeps a state that another file's tests could meet, so a worker loads the program once. */
const pure = { ...shared, isolate: false };

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    // Left to itself, the runner leaves one of two cores to itself.
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: {
          ...shared,
          name: 'command',
          include: within(STARTS_OTHERS),
          globalSetup: 'tests/support/freshBuild.ts',
        },
      },
      {
        extends: true,
        test: {
          ...pure,
          name: 'utc',
          env: { TZ: 'UTC' },
          include: ['tests/**/*.test.ts'],
          exclude: within(STARTS_OTHERS),
        },
      },
      {
        extends: true,
        test: {
          ...pure,
          name: 'auckland',
          env: { TZ: 'Pacific/Auckland' },
          include: [...within(KNOWS_TIME), 'tests/tidy.test.ts'],
        },
      },
    ],
  },
});
