import { describe, expect, it } from 'vitest'
import type { LoadCourse } from '#contract/breaks/evaluation.ts'
import { courseWords, rateWords } from '#words/breaks/courseWords.ts'

const course = {
  ...{ timeToPeakS: 5.55, timeToFailureS: null, meanRateNPerS: 1414.3, rateSpreadPercent: 3.2, toe: null },
  ...{ impulseNs: 20689, workJ: null, pressSpeedMmPerS: null, peaks: 2 },
} as LoadCourse

describe('rateWords', () => {
  it('gives the rate before the peak and on the way up with its spread', () => {
    expect(rateWords(1431.1, course)).toBe('1431.1 N/s just before the peak, 1414.3 N/s on the way up, spread (SD) 3 %')
  })
  it('says what is not known of a result without a course', () => {
    expect(rateWords(null, null)).toBe('not known just before the peak, not known on the way up')
  })
})

describe('courseWords', () => {
  it('leaves out what there is not', () => {
    expect(courseWords(course)).toEqual([
      ['time', '5.55 s from start of loading to peak, not known to failure'],
      ['peaks', '2'],
      ['area', '20\u2009689 N s under load and time'],
    ])
  })
  it('says by what the work was found', () => {
    const work = (pressSpeedMmPerS: number | null) => courseWords({ ...course, workJ: 1.66, pressSpeedMmPerS }).at(-1)
    expect(work(0.08)).toEqual(['work', '1.66 J at 0.08 mm/s'])
    expect(work(5 / 60)).toEqual(['work', '1.66 J at 0.08333 mm/s'])
    expect(work(null)).toEqual(['work', '1.66 J by the displacement measured'])
  })
})
