import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    setupFiles: ['test/property-seed.ts'],
    include: ['test/**/*.test.ts'],
    testTimeout: 300_000,
    hookTimeout: 120_000,
    // A page on a busy machine takes its time; what never comes still fails.
    expect: { poll: { timeout: 60_000 } },
    pool: 'forks',
    maxWorkers: 2,
  },
})
