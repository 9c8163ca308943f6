import { describe, expect, it } from 'vitest'
import { noThresholds, readThresholds, type ThresholdTexts } from '#renderer/pages/reevaluation/begin/thresholdForm.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const SI = quantitiesIn('SI')
const US = quantitiesIn('US')
const typed = (texts: Partial<ThresholdTexts>) => ({ ...noThresholds, ...texts })

describe('thresholds as typed', () => {
  it('names nothing while nothing is typed', () =>
    expect(readThresholds(noThresholds, SI)).toEqual({ settings: {}, errors: null }))

  it('keeps percent as a share, minutes as seconds and codes as a pair', () => {
    const { settings } = readThresholds(
      typed({
        breakDropShare: '30',
        pressSpeedMmPerS: '6',
        settlingTimeS: '0',
        startNoiseMultiple: '7.5',
        lowestCode: '-8388608',
        highestCode: '8388607',
      }),
      SI,
    )
    expect(settings).toEqual({
      breakDropShare: 0.3,
      pressSpeedMmPerS: 0.1,
      settlingTimeS: 0,
      startNoiseMultiple: 7.5,
      endCodes: [-8_388_608, 8_388_607],
    })
  })

  it('reads US units', () => {
    const { settings } = readThresholds(typed({ capacityN: '4500', pressSpeedMmPerS: '0,2' }), US)
    // 1 lbf = 4.4482216152605 N and 1 in = 25.4 mm, both exact (NIST SP 811).
    expect(settings?.capacityN).toBeCloseTo(4500 * 4.4482216152605, 6)
    expect(settings?.pressSpeedMmPerS).toBeCloseTo((0.2 * 25.4) / 60, 12)
  })

  it('takes "unknown" where something may be unknown, and nowhere else', () => {
    expect(
      readThresholds(
        typed({ capacityN: 'unknown', pressSpeedMmPerS: 'Unknown', lowestCode: 'unknown', highestCode: 'unknown' }),
        SI,
      ).settings,
    ).toEqual({ capacityN: null, pressSpeedMmPerS: null, endCodes: null })
    expect(readThresholds(typed({ endHoldS: 'unknown' }), SI).errors?.endHoldS).toContain('is not a number')
  })

  it.each([
    [{ breakDropShare: '100' }, 'breakDropShare', 'Between 0 and 100 %.'],
    [{ endShare: '0' }, 'endShare', 'Between 0 and 100 %.'],
    [{ breakDropWithinS: '0' }, 'breakDropWithinS', 'It must be more than 0 s.'],
    [{ settlingTimeS: '-1' }, 'settlingTimeS', 'It cannot be less than 0.'],
    [{ capacityN: 'four' }, 'capacityN', '“four” is not a number. Write it in N, or “unknown”.'],
    [{ highestCode: '8388607' }, 'lowestCode', 'Write both codes, or neither.'],
    [{ lowestCode: '0' }, 'highestCode', 'Write both codes, or neither.'],
    [{ lowestCode: 'unknown', highestCode: '5' }, 'lowestCode', 'Write both codes, or neither.'],
    [{ lowestCode: '9', highestCode: '5' }, 'highestCode', 'It must be above the lowest code.'],
  ] as const)('refuses %j and says why beside %s', (texts, key, words) =>
    expect(readThresholds(typed(texts), SI)).toEqual({ settings: null, errors: { [key]: words } }),
  )
})
