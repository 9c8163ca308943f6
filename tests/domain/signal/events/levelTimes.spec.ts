import { describe, expect, it } from 'vitest'
import { levelTimes } from '#domain/signal/events/levelTimes.ts'

describe('when a curve first reaches levels', () => {
  it('lies on the line from the mean before to the first one that is there', () => {
    const timeS = Float64Array.of(0, 1, 2, 3, 4)
    const force = Float64Array.of(5, 10, 8, 20, 40)
    // 15 lies between 8 at 2 s and 20 at 3 s: 2 + 7 / 12; 30 half way from 20 to 40.
    const reached = levelTimes(timeS, force, [2, 5, 7.5, 10, 15, 30, 41])
    expect([...reached.slice(0, 4)]).toEqual([0, 0, 0.5, 1])
    expect(reached[4]).toBeCloseTo(2 + 7 / 12, 12)
    expect(reached[5]).toBeCloseTo(3.5, 12)
    expect(reached[6]).toBeNaN()
  })

  it('is never in a curve without means', () => {
    expect(levelTimes(new Float64Array(), new Float64Array(), [1])[0]).toBeNaN()
  })
})
