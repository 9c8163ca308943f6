import { describe, expect, it } from 'vitest'
import { courseLines } from '#renderer/pages/break/LoadingFigures.tsx'
import { quantitiesIn } from '#renderer/widgets/quantities.ts'

const unknown = {
  ...{ peaks: 1, timeToPeakS: null, timeToFailureS: null, meanRateNPerS: null, rates: [], rateSpreadPercent: null },
  ...{ toe: null, impulseNs: null, pressSpeedMmPerS: null, workJ: null },
}

describe('courseLines', () => {
  it('says honestly what is not known', () => {
    const { force, length } = quantitiesIn('SI')
    const lines = new Map(courseLines(unknown, force, length))
    expect(lines.get('Time to failure')).toBe('not known')
    expect(lines.get('Speed of the press')).toBe('not given')
    expect(lines.get('Work to failure')).toBe('not known without a speed')
    expect(lines.has('Slope of that line')).toBe(false)
  })
  it('writes speeds by the minute and in the units shown', () => {
    const { force, length } = quantitiesIn('US')
    // 25.4 mm/s x 60 s = 60 in/min, by 1 in = 25.4 mm
    const lines = new Map(courseLines({ ...unknown, pressSpeedMmPerS: 25.4, workJ: 2 }, force, length))
    expect(lines.get('Speed of the press')).toBe('60.00 in/min')
    expect(lines.get('Work to failure')).toBe('2.00 J, at that speed')
  })
})
