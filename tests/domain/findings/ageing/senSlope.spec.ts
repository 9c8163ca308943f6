import { describe, expect, it } from 'vitest'
import type { AgedBlock } from '#domain/findings/ageing/agedBlock.ts'
import { pairsBelow, senSlope } from '#domain/findings/ageing/senSlope.ts'
import { median } from '#domain/numbers/quantile.ts'
import { createRandom } from '#domain/numbers/random.ts'

function series(seed: number): AgedBlock[] {
  const random = createRandom(seed)
  const decimals = seed % 2 === 0 ? 0 : 6
  return Array.from({ length: random.wholeBetween(2, 30) }, () => ({
    ageMonths: [0, 6, 12, 24][random.wholeBetween(0, 3)]!,
    strengthMPa: Number(random.between(4, 12).toFixed(decimals)),
  }))
}
/** All slopes, one by one: the definition. */
const slopes = (blocks: readonly AgedBlock[]) =>
  blocks.flatMap((one, i) =>
    blocks
      .slice(0, i)
      .filter(({ ageMonths }) => ageMonths !== one.ageMonths)
      .map((other) => (one.strengthMPa - other.strengthMPa) / (one.ageMonths - other.ageMonths)),
  )

describe('the slope of Sen', () => {
  it('is the median of all slopes, in 300 random series with and without ties', () => {
    for (let seed = 0; seed < 300; seed++) {
      const blocks = series(seed)
      const all = slopes(blocks)
      if (all.length === 0) expect(senSlope(blocks)).toBeNull()
      else expect([seed, senSlope(blocks)]).toEqual([seed, expect.closeTo(median(all), 10)])
    }
  })

  it('counts the slopes below a value', () => {
    for (let seed = 0; seed < 50; seed++) {
      const blocks = series(2 * seed + 1)
      expect(pairsBelow(blocks, 0.1)).toBe(slopes(blocks).filter((slope) => slope < 0.1).length)
    }
  })

  it('is 0 where all strengths are equal', () => {
    expect(senSlope([0, 6, 12].map((ageMonths) => ({ ageMonths, strengthMPa: 5 })))).toBe(0)
  })
})
