import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['tests/**/*.spec.{ts,tsx}'],
    globalSetup: ['tests/buildThreads.ts'],
    setupFiles: ['tests/failOnConsole.ts'],
    testTimeout: 20_000,
    pool: 'forks',
  },
})
