import { describe, expect, it } from 'vitest'
import { undecidedGroups } from '#domain/findings/next/undecidedGroups.ts'

const wanted = { marginPercent: 10, confidence: 0.95, power: 0.8 }
/** Blocks about a mean with a coefficient of variation of exactly 10 %. */
const blocks = (group: string, count: number, mean: number) => {
  const steps = Array.from({ length: count }, (_, i) => i - (count - 1) / 2)
  const sd = Math.sqrt(steps.reduce((sum, step) => sum + step * step, 0) / (count - 1))
  return { group, values: Float64Array.from(steps, (step) => mean * (1 + (0.1 * step) / sd)) }
}
const reference = blocks('R2', 8, 10)
const found = (mean: number, count = 8, change: Partial<typeof wanted> = {}) =>
  undecidedGroups(reference, [blocks('C1', count, mean)], 12, { ...wanted, ...change })

describe('a group that is undecided', () => {
  it('needs as many blocks as R says, for a difference of one SD', () => {
    // R 4.2.2: power.t.test(delta = 1, sd = 1, power = 0.8)$n is 16.71477; delta = 2: 5.089995
    expect(found(10.2)).toEqual([
      {
        group: 'C1',
        reference: 'R2',
        ageMonths: 12,
        n: 8,
        referenceN: 8,
        cvPercent: expect.closeTo(10, 9),
        needed: 17,
      },
    ])
    expect(found(11.1, 4, { marginPercent: 20 })).toMatchObject([{ n: 4, needed: 6 }])
  })

  it('is none that is stronger or weaker than the reference', () => {
    expect(found(13)).toEqual([])
    expect(found(7)).toEqual([])
  })

  it('is none that is shown to be alike, or has the blocks that it takes', () => {
    expect(found(10, 8, { marginPercent: 12 })).toEqual([])
    const many = blocks('R2', 30, 10)
    expect(undecidedGroups(many, [blocks('C1', 20, 10.3)], 0, wanted)).toEqual([])
  })

  it('may be one block alone, and is none without blocks or without a spread', () => {
    expect(undecidedGroups(reference, [{ group: 'C1', values: Float64Array.of(9) }], 0, wanted)).toMatchObject([
      { n: 1 },
    ])
    expect(undecidedGroups(reference, [{ group: 'C1', values: new Float64Array() }], 0, wanted)).toEqual([])
    const alike = { group: 'R2', values: Float64Array.of(5, 5) }
    expect(undecidedGroups(alike, [{ group: 'C1', values: Float64Array.of(5, 5) }], 0, wanted)).toEqual([])
  })

  it('is not told from a reference of one block', () => {
    expect(undecidedGroups({ group: 'R2', values: Float64Array.of(9) }, [blocks('C1', 8, 10)], 0, wanted)).toEqual([])
  })
})
