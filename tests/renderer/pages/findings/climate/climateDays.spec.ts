import { describe, expect, it } from 'vitest'
import { climateDays, toComeOf } from '#renderer/pages/findings/climate/climateDays.ts'

const day = 86_400
const pull = (dueS: number, series = 'C1') => ({ series, ageMonths: 12, dueS })
const ages = [{ ageMonths: 0, brokenS: 20 * day, n: 3, meanMPa: null, lowMPa: null, highMPa: null }]

describe('the days that are marked over a climate', () => {
  it('begin with the glue-up and end with the pulls to come that are near', () => {
    const series = { gluedS: 10 * day, ages }
    const climate = { fromS: 15 * day, toS: 110 * day }
    const { days, axis } = climateDays(climate, series, [pull(150 * day), pull(400 * day)])
    expect(days.map(({ timeS, isToCome = false }) => [timeS / day, isToCome])).toEqual([
      [10, false],
      [20, false],
      [150, true],
    ])
    expect(axis).toEqual({ fromS: 10 * day, toS: 150 * day })
  })

  it('leave the time as it was read where no pull is near', () => {
    const climate = { fromS: 0, toS: 100 * day }
    expect(climateDays(climate, null, [pull(151 * day)])).toEqual({ days: [], axis: climate })
  })

  it('are of the series that is shown, and each once where none is', () => {
    const all = [pull(1, 'C1'), pull(1, 'R2'), pull(2, 'R2')]
    expect(toComeOf(all, { key: 'C1' })).toEqual([all[0]])
    expect(toComeOf(all, null)).toEqual([all[0], all[2]])
  })
})
