import { defineConfig } from 'vitest/config';
import { scratchFolder } from './support/inMemory.ts';
import { LongestFirst } from './support/order.ts';

/**
 * Most tests know no time: they run once, under UTC. What knows time runs a second time on the other side of the world, so
 * that nothing notices in which zone the machine stands.
 */
const KNOWS_TIME = ['time', 'timeline', 'readers', 'measures', 'golden', 'shapes'];
/** Of those rooms, what looks at sizes, packing, units and words alone. */
const NO_TIME = ['readers/bounds', 'readers/containers', 'readers/nutrients', 'readers/ucum', 'shapes/words'];
/** These start programs, browsers, a queue's server, or packages of their own, and set the zones of those. */
const STARTS_OTHERS = ['cli', 'browser', 'reliability'];

const within = (rooms: string[]): string[] => rooms.map((room) => `tests/${room}/**/*.test.ts`);
/** No file of tests leaves a state that another could meet, so a worker loads the program once. */
const shared = { testTimeout: 180_000, hookTimeout: 60_000, setupFiles: ['tests/support/seed.ts'], isolate: false };

// Workers, and the programs that they start, find it here.
process.env.TMPDIR = scratchFolder();

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    // Left to itself, the runner leaves one of two cores to itself; a third worker works while another waits for a queue,
    // a browser or a program that was told to stop.
    maxWorkers: 3,
    sequence: { sequencer: LongestFirst },
    // Two of the projects find transformed what another, or an earlier run, has transformed already.
    experimental: { fsModuleCache: true },
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
          ...shared,
          name: 'utc',
          env: { TZ: 'UTC' },
          include: ['tests/**/*.test.ts'],
          exclude: within(STARTS_OTHERS),
        },
      },
      {
        extends: true,
        test: {
          ...shared,
          name: 'auckland',
          env: { TZ: 'Pacific/Auckland' },
          include: [...within(KNOWS_TIME), 'tests/tidy.test.ts'],
          exclude: NO_TIME.map((file) => `tests/${file}.test.ts`),
        },
      },
    ],
  },
});
