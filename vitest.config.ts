import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    setupFiles: ['test/property-seed.ts'],
    include: ['test/**/*.test.ts'],
    testTimeout: 300_000,
    hookTimeout: 120_000,
    pool: 'forks',
    maxWorkers: 2,
  },
})
