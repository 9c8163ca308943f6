import { describe, expect, it } from 'vitest'
import { forceSteps } from '#domain/calibration/steps/forceSteps.ts'

describe('steps of forces', () => {
  it('are the forces themselves where each load was applied exactly again', () => {
    expect(forceSteps([0, 100, 200, 200, 100, 0])).toEqual([0, 100, 200, 200, 100, 0])
    // 0.1 + 0.2 and 0.3 differ in their last binary digit alone.
    expect(new Set(forceSteps([0.1 + 0.2, 0.3])).size).toBe(1)
  })

  it('never lie outside the forces that were applied, however many digits these have', () => {
    // 5 kg and 57 kg of conventional mass at 9.81366 m/s2: neither force ends after twelve digits.
    const applied = [49.06093994692614, 559.2799971129739]
    expect(forceSteps(applied)).toEqual(applied)
  })

  it('join forces that differ by no more than two weights of the same name may', () => {
    // Two 20 kg weights of class M3 lie within 20 g of each other: R 111-1:2004, Table 1, 10 g either way; 0.1 % of 20 kg.
    expect(forceSteps([196, 196.1, 392, 0])).toEqual([196.05, 196.05, 392, 0])
    expect(forceSteps([100, 100.095])).toEqual([100.0475, 100.0475])
    expect(forceSteps([100, 100.105])).toEqual([100, 100.105])
  })

  it('have twelve digits: not one more, and not less where they tell forces apart', () => {
    expect(forceSteps([100, 100.00000000004])).toEqual([100, 100])
    expect(forceSteps([100.00000001, 100.00000003])).toEqual([100.00000002, 100.00000002])
  })

  it('never grow from neighbour to neighbour', () => {
    expect(new Set(forceSteps([1000, 1000.9, 1001.8, 1002.7])).size).toBe(2)
  })
})
