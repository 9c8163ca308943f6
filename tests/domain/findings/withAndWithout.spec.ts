import { describe, expect, it } from 'vitest'
import { withAndWithout } from '#domain/findings/withAndWithout.ts'

const treatment = { woodFailure: 'observed', limitPercent: 75, adjustFactor: 1 } as const
const block = (strengthMPa: number, excludedBecause: string | null = null, woodFailurePercent = 0) => ({
  ...{ strengthMPa, woodFailurePercent, excludedBecause },
})
// NIST/SEMATECH e-Handbook 1.3.5.17.1 (Tietjen and Moore 1972): Grubbs points out 245.57 alone, mean 206.43375.
const handbook = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57].map((value) => block(value))

describe('results with and without blocks', () => {
  it('points out the block of the handbook and stands both means beside each other', () => {
    const { counted, putBack, trimmed, pointedOut } = withAndWithout(handbook, treatment, 0.95)
    expect(pointedOut).toEqual([{ block: handbook[7], strengthMPa: 245.57, tests: ['grubbs', 'generalized-esd'] }])
    expect(counted).toMatchObject({ n: 8, meanMPa: expect.closeTo(206.43375, 8) })
    expect(trimmed).toMatchObject({ n: 7, meanMPa: expect.closeTo((206.43375 * 8 - 245.57) / 7, 8) })
    expect(putBack).toBeNull()
  })
  it('puts back what a person left out, only beside what counts', () => {
    const blocks = [...handbook.slice(0, 7), block(245.57, 'slipped')]
    const { counted, putBack, trimmed, leftOut } = withAndWithout(blocks, treatment, 0.95)
    expect(counted.n).toBe(7)
    expect(putBack).toMatchObject({ n: 8, meanMPa: expect.closeTo(206.43375, 8) })
    expect(trimmed).toBeNull()
    expect(leftOut).toHaveLength(1)
  })
  it('looks at the strengths that the treatment of torn wood leaves', () => {
    const blocks = [...handbook.slice(0, 7), block(245.57, null, 100)]
    expect(withAndWithout(blocks, { ...treatment, woodFailure: 'bond-only' }, 0.95)).toMatchObject({
      counted: { n: 7 },
      pointedOut: [],
    })
  })
  it('has no mean where nothing counts', () => {
    expect(withAndWithout([block(5, 'slipped')], treatment, 0.95)).toMatchObject({
      counted: { n: 0, meanMPa: null },
      putBack: { n: 1, meanMPa: 5, lowMPa: null },
    })
  })
})
