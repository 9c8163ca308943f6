import { describe, expect, it } from 'vitest'
import { loadCourse } from '#contract/breaks/evaluation.ts'
import { courseOf } from '#domain/signal/events/course.ts'
import { lines, madeCurve } from '#tests/fakes/madeCurve.ts'

const curve = madeCurve(lines([0, 0], [1, 0], [11, 3000], [11.01, 100], [12, 100]), {
  intervalS: 0.001,
  endS: 12,
  onsetS: 1,
  breakS: 11,
  afterBreak: 100,
  fallS: 0.008,
})

describe('course of a loading', () => {
  it('of a ramp is known in closed form', () => {
    const course = courseOf(curve, 1, null, null, { pressSpeedMmPerS: 0.05 })
    expect(loadCourse.parse(course)).toEqual(course)
    expect(course).toMatchObject({ peaks: 1, pressSpeedMmPerS: 0.05 })
    expect(course.timeToPeakS).toBeCloseTo(10, 6)
    expect(course.timeToFailureS).toBeCloseTo(10, 6)
    expect(course.meanRateNPerS).toBeCloseTo(300, 6)
    expect(course.toe!.zeroTimeS).toBeCloseTo(1, 6)
    // 3000 N x 10 s / 2, and at 0.05 mm/s half a millimetre: 3000 x 0.5 / 2 = 750 N mm.
    expect(course.impulseNs! / 15_000).toBeCloseTo(1, 5)
    expect(course.workJ! / 0.75).toBeCloseTo(1, 5)
  })

  it('has the area up to the break where the load sagged between peak and break', () => {
    const sagged = madeCurve(lines([0, 0], [10, 3000], [14, 2000]), {
      intervalS: 0.001,
      endS: 14,
      breakS: 14,
      afterBreak: 100,
    })
    const course = courseOf(sagged, 1, null, null, { pressSpeedMmPerS: null })
    expect(course.timeToPeakS).toBeCloseTo(10, 6)
    expect(course.timeToFailureS).toBeCloseTo(14, 6)
    // 3000 N x 10 s / 2, and 4 s at 2500 N on the average.
    expect(course.impulseNs).toBeCloseTo(25_000, 3)
  })

  it('of an unloading has no time to failure, and its area goes to the peak', () => {
    const course = courseOf({ ...curve, breakS: null, afterBreak: null }, 1, null, null, { pressSpeedMmPerS: null })
    expect(course).toMatchObject({ timeToFailureS: null, pressSpeedMmPerS: null, workJ: null })
    expect(course.impulseNs! / 15_000).toBeCloseTo(1, 5)
  })
})
