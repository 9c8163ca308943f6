import { globSync, readFileSync } from 'node:fs'
import { expect, it } from 'vitest'

const limits = [
  /\bvi\.wait(?:For|Until)\(/g,
  /\b\w*[tT]imeout: [\d_]+/g,
  // Of a test, and of what is done before and after.
  /^ *\}, [\d_]{4,}\)$/gm,
  /^ *(?:before|after)(?:All|Each)\(.*, [\d_]{4,}\)$/gm,
]

/** How long a test waits is said once, in vitest.config.ts: a number of its own fails on a machine that has much to do. */
const limitsIn = (source: string) => limits.flatMap((limit) => source.match(limit) ?? [])

it.each([
  "it('reads', async () => {\n  await read()\n}, 60_000)",
  '  afterAll(() => program.close(), 60_000)',
  "it('reads', { timeout: 5000 }, read)",
  'await vi.waitFor(() => expect(ends).toBe(1))',
])('a limit is found in %j', (source) => expect(limitsIn(source)).toHaveLength(1))

it('no spec has a limit of its own', () => {
  const specs = globSync('tests/**/*.spec.{ts,tsx}').filter((path) => !path.endsWith('patience.spec.ts'))
  expect(specs.length).toBeGreaterThan(900)
  expect(specs.flatMap((path) => limitsIn(readFileSync(path, 'utf8')).map((text) => `${path}: ${text}`))).toEqual([])
})
