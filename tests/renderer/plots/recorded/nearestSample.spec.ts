import { describe, expect, it } from 'vitest'
import { forceNear } from '#renderer/plots/recorded/nearestSample.ts'

const timeS = Float64Array.of(0, 1, 2, 3)

describe('forceNear', () => {
  it('gives the force there', () => {
    expect(forceNear(timeS, Float64Array.of(0, 10, 20, 5), 2.2)).toBe(20)
    expect(forceNear(new Float64Array(), new Float64Array(), 2)).toBe(0)
  })
})
