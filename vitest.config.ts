import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['tests/**/*.spec.{ts,tsx}'],
    globalSetup: ['tests/buildThreads.ts'],
    setupFiles: ['tests/failOnConsole.ts'],
    // Against a hang alone: no test may depend on how long it takes, on whatever machine.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    expect: { poll: { timeout: 120_000 } },
    pool: 'forks',
  },
})
