import { describe, expect, it } from 'vitest'
import { detectionSettings } from '#contract/breaks/detection.ts'
import { createCurveEvaluator } from '#domain/signal/loading/curveEvaluator.ts'
import { createRunningCapture } from '#domain/signal/loading/runningCapture.ts'

/** An evaluator that notes the times it is given, and sees a load or the end when told to. */
function noting({ loads = false, overAtS = Number.POSITIVE_INFINITY } = {}) {
  const heardS: number[] = []
  let finished = false
  let over = false
  return {
    heardS,
    isFinished: () => finished,
    evaluator: {
      ...createCurveEvaluator(detectionSettings.parse({})),
      take(timeS: Float64Array, _force: Float64Array, _reading: Float64Array, from: number, to: number) {
        for (let i = from; i < to; i++) {
          heardS.push(timeS[i]!)
          over = timeS[i]! >= overAtS
          if (over) return i + 1
        }
        return to
      },
      over: () => over,
      loading: () => loads,
      finish() {
        finished = true
      },
    },
  }
}

/** Times of 4 samples a second, from 1000 s on, in binary fractions. */
const timesS = (count: number) => Float64Array.from({ length: count }, (_, i) => 1000 + i / 4)

describe('a running capture', () => {
  it('hands on its samples with times since its first one, in blocks of any length and place', () => {
    const { evaluator, heardS } = noting({ loads: true })
    const capture = createRunningCapture(evaluator, 990, 1000, 2.5)
    const timeS = timesS(9000)
    for (const [from, to] of [
      [0, 3],
      [3, 1024],
      [1024, 1025],
      [1025, 9000],
    ] as const)
      expect(capture.take(timeS, timeS, timeS, from, to)).toBe(to)
    expect(heardS).toEqual([...timeS].map((t) => t - 990))
    expect([capture.noise, capture.over()]).toEqual([2.5, false])
  })

  it('is given up with the first sample that lies more than 10 s after its beginning, where no load is seen', () => {
    for (const longest of [1, 7, 1000]) {
      const { evaluator, heardS, isFinished } = noting()
      const capture = createRunningCapture(evaluator, 990, 1002, 1)
      const timeS = timesS(200)
      let at = 0
      while (at < timeS.length && !capture.over())
        at = capture.take(timeS, timeS, timeS, at, Math.min(timeS.length, at + longest))
      // 1012 s are the sample 48, which is not too late yet.
      expect([at, heardS.length]).toEqual([50, 50])
      expect([capture.over(), isFinished()]).toEqual([true, true])
    }
  })

  it('goes on while a load is seen, and is over with what the evaluator says', () => {
    const long = noting({ loads: true })
    const capture = createRunningCapture(long.evaluator, 990, 1000, 1)
    capture.take(timesS(200), timesS(200), timesS(200), 0, 200)
    expect([long.heardS.length, capture.over()]).toEqual([200, false])
    // 20 s since the first sample, while none was late.
    const ended = noting({ overAtS: 20 })
    const over = createRunningCapture(ended.evaluator, 990, 1005, 1)
    expect(over.take(timesS(200), timesS(200), timesS(200), 0, 200)).toBe(41)
    expect([over.over(), ended.isFinished()]).toEqual([true, false])
  })
})
