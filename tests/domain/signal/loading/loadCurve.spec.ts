import { describe, expect, it } from 'vitest'
import { detectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { evaluateCurve } from '#domain/signal/loading/evaluateCurve.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'
import { lines } from '#tests/fakes/madeCurve.ts'

type Point = readonly [timeS: number, force: number]

const thresholdN = 10
const settings = detectionSettings.parse({ startThresholdN: thresholdN })

/** What is found in a load that follows straight lines between points, after 2 s at rest; sampled without noise. */
function found(points: readonly Point[], rateHz = 1000, change: Partial<typeof settings> = {}): EvaluationResult {
  const forceAt = lines([-2, 0], [0, 0], ...points)
  const endS = points.at(-1)![0]
  const timeS = Float64Array.from({ length: Math.round((endS + 2) * rateHz) + 1 }, (_, i) => i / rateHz)
  return evaluateCurve(
    timeS,
    timeS.map((t) => forceAt(t - 2)),
    null,
    { ...settings, ...change },
  )
}

/** A ramp to 1000 N in 5 s that falls to 500 N at once, is driven up to `againN` 0.4 s later, held there and lost at 8 s. */
const driven = (againN: number): Point[] => [
  [5, 1000],
  [5.001, 500],
  [5.35, 500],
  [5.4, againN],
  [8, againN],
  [8.001, 0],
  [10, 0],
]

describe('a fall of the load', () => {
  it('was no break where the load comes back to 0.9 of its peak', () => {
    const goesOn = (againN: number) => found(driven(againN)).breakTimeS! > 9
    expect(found(driven(890)).breakTimeS).toBeCloseTo(7, 2)
    expect(found(driven(910)).breakTimeS).toBeCloseTo(10, 2)
    expect(limitOf(goesOn, 800, 990)).toBeCloseTo(900, 0)
  })

  it('is followed by a load that is its mean from 0.1 s to 0.3 s after it', () => {
    // Falling by 1000 N a second from 550 N on, it is 350 N on the mean of those, with the sample in which it fell before it.
    const { outcome, afterBreakN } = found([
      [5, 1000],
      [5.001, 550],
      [5.5, 51],
      [7, 51],
    ])
    expect(outcome).toBe('break')
    expect(Math.abs(afterBreakN! - 350)).toBeLessThan(1.5)
  })
})

describe('a loading', () => {
  /** A load that is there within 0.03 s, stays for a second and is gone at once. */
  const put = (peakN: number): Point[] => [
    [0.03, peakN],
    [1, peakN],
    [1.001, 0],
    [4, 0],
  ]

  it('that is there all at once must reach 40 start thresholds, else it was a weight put on the bench', () => {
    expect(limitOf((peakN) => found(put(peakN)).outcome === 'break', 100, 900)).toBeCloseTo(40 * thresholdN, 0)
  })

  it('below that takes 0.2 s to 0.8 of its peak at least', () => {
    const within = (riseS: number): Point[] => [
      [riseS, 300],
      [1, 300],
      [1.001, 0],
      [4, 0],
    ]
    const riseS = limitOf((riseS) => found(within(riseS)).outcome === 'break', 0.1, 0.4)
    // The onset is known to the sample, the load to means of 5 ms.
    expect(Math.abs(0.8 * riseS - 0.2)).toBeLessThan(0.008)
  })

  it('comes to 3 start thresholds at least', () => {
    const slowly = (peakN: number): Point[] => [
      [5, peakN],
      [5.001, 0],
      [8, 0],
    ]
    expect(limitOf((peakN) => found(slowly(peakN)).outcome === 'break', 15, 90)).toBeCloseTo(3 * thresholdN, 0)
  })
})
