import { defineConfig } from 'vitest/config'

/** Rooms below the fire line keep no state, so their test files may share the modules they load. */
const PURE = [
  'base',
  'brief',
  'catalog',
  'corpus',
  'geometry',
  'measure',
  'reading',
  'reconcile',
  'records',
  'rules',
  'words',
]
const pure = PURE.map((room) => `tests/${room}/**/*.test.ts`)

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    testTimeout: 30_000,
    hookTimeout: 120_000,
    pool: 'forks',
    // Most files wait for a database, a browser or a child process; a core kept free would stand idle. More workers than cores
    // saved nothing on two, and made browsers late.
    maxWorkers: '100%',
    projects: [
      { extends: true, test: { name: 'pure', include: pure, isolate: false } },
      {
        extends: true,
        test: {
          name: 'world',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/bench/**', ...pure],
          globalSetup: ['tests/support/global-setup.ts'],
        },
      },
    ],
  },
})
