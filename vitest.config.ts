import { availableParallelism } from 'node:os'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/e2e/**', 'tests/bench/**', 'tests/soak/**', 'node_modules/**'],
    // The default leaves a core idle, which of two is half the machine.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    testTimeout: 60_000,
  },
})
