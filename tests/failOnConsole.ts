import { afterEach, beforeEach, vi } from 'vitest'

// A test that logs has found something worth knowing: it fails instead of scrolling by.
const logged: string[] = []

beforeEach(() => {
  logged.length = 0
  for (const method of ['log', 'info', 'warn', 'error', 'debug'] as const)
    vi.spyOn(console, method).mockImplementation((...words: unknown[]) => {
      logged.push(`${method}: ${words.map(String).join(' ')}`)
    })
})

afterEach(() => {
  vi.restoreAllMocks()
  if (logged.length > 0) throw new Error(`the test logged to the console:\n${logged.join('\n')}`)
})
