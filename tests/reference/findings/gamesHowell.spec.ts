import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { gamesHowell } from '#domain/findings/compare/pairs.ts'
import { randomStudies } from './dataSets.ts'

// Expected: scipy 1.17, by gamesHowellNumbers.py beside this file, on the same studies (`studiesCsv`).
const expected = readFileSync(new URL('./gamesHowellNumbers.ndjson', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .map((line) => JSON.parse(line) as (number | null)[])

it('all pairs of 200 random studies by Games and Howell are those that scipy printed', () => {
  expect(expected).toHaveLength(200)
  const blocks = randomStudies(expected.length)
  for (const [i, ps] of expected.entries()) {
    const study = blocks.filter(({ set }) => set === i + 1)
    const groups = [...Map.groupBy(study, ({ group }) => group)].map(([group, all]) => ({
      group,
      values: Float64Array.from(all, ({ strength }) => strength),
    }))
    const found = gamesHowell(groups, 0.95).map(({ p }) => p)
    expect(found).toHaveLength(ps.length)
    for (const [k, p] of ps.entries())
      if (p === null) expect(found[k]).toBeNull()
      // scipy's integral has some ten digits of 1.
      else expect(Math.abs(found[k]! - p), `study ${i + 1}, pair ${k}`).toBeLessThan(1e-6 * Math.max(p, 1e-3))
  }
})
