import { describe, expect, it } from 'vitest'
import { zeroErrorN } from '#domain/calibration/steps/zeroError.ts'

const zero = (run: number, direction: 'up' | 'down', indicatedN: number) => ({ run, direction, forceN: 0, indicatedN })

describe('zero error', () => {
  it('is what is left over at zero after unloading, the largest of the runs in size', () => {
    const rows = [
      zero(1, 'up', 0.1),
      { run: 1, direction: 'up', forceN: 50, indicatedN: 99 } as const,
      zero(1, 'down', 0.3),
      zero(2, 'up', 0.4),
      zero(2, 'down', -0.1),
    ]
    expect(zeroErrorN(rows)).toBeCloseTo(-0.5, 12)
  })

  it('is the largest also where that is not the last, and nothing where nothing is left over', () => {
    const rows = [zero(1, 'up', 0), zero(1, 'down', -0.5), zero(2, 'up', 0), zero(2, 'down', 0.2)]
    expect(zeroErrorN(rows)).toBe(-0.5)
    expect(zeroErrorN([zero(1, 'up', 0.1), zero(1, 'down', 0.1)])).toBe(0)
  })

  it('is not known where no run has both zeros', () => {
    expect(zeroErrorN([zero(1, 'up', 0), zero(2, 'down', 1)])).toBeNull()
    expect(zeroErrorN([])).toBeNull()
  })
})
