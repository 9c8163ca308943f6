import { availableParallelism } from 'node:os'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['tests/**/*.spec.{ts,tsx}'],
    setupFiles: ['tests/failOnConsole.ts'],
    testTimeout: 20_000,
    pool: 'forks',
    // Many tests wait for a browser or a port: a core kept free for vitest itself would be idle most of the time.
    maxWorkers: availableParallelism(),
  },
})
