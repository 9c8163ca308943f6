import { describe, expect, it } from 'vitest'
import { repeatedSteps } from '#domain/calibration/steps/repeatedSteps.ts'

describe('steps that repeats belong to', () => {
  it('are those of equal force, as weights make them', () => {
    expect(repeatedSteps([10, 20, 11, 21], [1, 2, 1, 2])).toEqual([1, 2, 1, 2])
  })

  it('are those of equal reading where forces were measured and readings set', () => {
    expect(repeatedSteps([10, 20, 10, 20], [1, 2, 1.1, 2.1])).toEqual([10, 20, 10, 20])
  })
})

describe('steps that are as many by either', () => {
  it('are those of equal force', () => {
    const forces = [1, 2, 3]
    expect(repeatedSteps([10, 20, 30], forces)).toBe(forces)
  })
})
