import { globSync, readFileSync } from 'node:fs'
import { defineConfig } from 'vitest/config'

const all = 'tests/**/*.spec.{ts,tsx}'
/** Who puts another module in place of one must not do so for those that come after. */
const replacing = globSync(all).filter((path) => /\bvi\.(?:mock|doMock)\(/.test(readFileSync(path, 'utf8')))

export default defineConfig({
  test: {
    projects: [
      // A process loads what the specs share but once: that costs more than most of them.
      { extends: true, test: { name: 'together', include: [all], exclude: replacing, isolate: false } },
      { extends: true, test: { name: 'alone', include: replacing } },
    ],
    globalSetup: ['tests/buildThreads.ts'],
    setupFiles: ['tests/failOnConsole.ts'],
    // Against a hang alone: no test may depend on how long it takes, on whatever machine.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    expect: { poll: { timeout: 120_000 } },
    pool: 'forks',
    // By itself it leaves a core to nobody: on two of them one spec would run at a time.
    maxWorkers: '100%',
  },
})
