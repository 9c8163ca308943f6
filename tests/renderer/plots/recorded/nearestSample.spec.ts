import { describe, expect, it } from 'vitest'
import { forceNear, nearestIndex } from '#renderer/plots/recorded/nearestSample.ts'

const timeS = Float64Array.of(0, 1, 2, 3)

describe('nearestIndex', () => {
  it('takes the sample nearest in time, also beyond the ends', () => {
    expect([-1, 0.4, 0.6, 2.9, 9].map((at) => nearestIndex(timeS, at))).toEqual([0, 0, 1, 3, 3])
  })
  it('is −1 where there are no samples', () => {
    expect(nearestIndex(new Float64Array(), 1)).toBe(-1)
  })
})

describe('forceNear', () => {
  it('gives the force there', () => {
    expect(forceNear(timeS, Float64Array.of(0, 10, 20, 5), 2.2)).toBe(20)
    expect(forceNear(new Float64Array(), new Float64Array(), 2)).toBe(0)
  })
})
