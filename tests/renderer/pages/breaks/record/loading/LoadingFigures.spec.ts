import { describe, expect, it } from 'vitest'
import { courseLines } from '#renderer/pages/breaks/record/loading/LoadingFigures.tsx'
import { quantitiesIn } from '#words/units/quantities.ts'

const unknown = {
  ...{ peaks: 1, timeToPeakS: null, timeToFailureS: null, meanRateNPerS: null, rates: [], rateSpreadPercent: null },
  ...{ toe: null, impulseNs: null, pressSpeedMmPerS: null, workJ: null },
}

describe('courseLines', () => {
  it('says honestly what is not known', () => {
    const lines = new Map(courseLines(unknown, quantitiesIn('SI')))
    expect(lines.get('Time to failure')).toBe('not known')
    expect(lines.get('Speed of the press')).toBe('not given')
    expect(lines.get('Work to failure')).toBe('not known without a speed')
    expect(lines.has('Slope of that line')).toBe(false)
  })
  it('writes speeds by the minute and in the units shown', () => {
    // 25.4 mm/s x 60 s = 60 in/min, by 1 in = 25.4 mm
    // and 1 ft·lbf = 1.355 818 J (NIST SP 811, appendix B.8), which is 12 in·lbf
    const course = { ...unknown, pressSpeedMmPerS: 25.4, workJ: 1.355818 }
    const shown = new Map(courseLines(course, quantitiesIn('US')))
    expect(shown.get('Speed of the press')).toBe('60.00 in/min')
    expect(shown.get('Work to failure')).toBe('12.00\u00a0in·lbf, at that speed')
    const stored = new Map(courseLines(course, quantitiesIn('SI')))
    expect(stored.get('Work to failure')).toBe('1.36\u00a0J, at that speed')
  })
})
