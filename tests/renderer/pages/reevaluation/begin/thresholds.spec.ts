import { describe, expect, it } from 'vitest'
import { detectionChange, detectionSettings } from '#contract/breaks/detection.ts'
import {
  changedWords,
  noThresholds,
  readThresholds,
  settingWords,
  type ThresholdTexts,
  thresholdGroups,
} from '#renderer/pages/reevaluation/begin/thresholds.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const SI = quantitiesIn('SI')
const US = quantitiesIn('US')
const typed = (texts: Partial<ThresholdTexts>) => ({ ...noThresholds, ...texts })

describe('thresholds as typed', () => {
  it('has a field for every threshold that may change', () => {
    const keys = thresholdGroups.flatMap(({ thresholds }) => thresholds.map(({ key }) => key))
    const known = Object.keys(detectionChange.shape).flatMap((key) =>
      key === 'endCodes' ? ['lowestCode', 'highestCode'] : [key],
    )
    expect(keys.toSorted()).toEqual(known.toSorted())
  })

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
    expect(settings?.capacityN).toBeCloseTo(4500 * 4.4482216152605, 9)
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

describe('thresholds in words', () => {
  it('says each that differs with its unit, and nothing of the rest', () => {
    expect(changedWords({}, SI)).toEqual([])
    expect(changedWords({ breakDropShare: 0.3, capacityN: null, settlingTimeS: 0.0125 }, SI)).toEqual([
      'a break falls by 30\u00a0%',
      'rated load unknown',
      'settling time 0.0125\u00a0s',
    ])
    expect(changedWords({ endCodes: [0, 16_777_215] }, SI)).toEqual([
      'lowest code 0',
      'highest code 16\u2009777\u2009215',
    ])
  })

  it('says what settings were', () => {
    const settings = detectionSettings.parse({ capacityN: 20_000 })
    expect(settingWords(settings, { key: 'breakDropShare', kind: 'share' }, SI)).toBe('40\u00a0%')
    expect(settingWords(settings, { key: 'capacityN', kind: 'force' }, SI)).toBe('20\u2009000\u00a0N')
    // A multiple is shown as it is stored.
    const noisy = detectionSettings.parse({ startNoiseMultiple: 7.5 })
    expect(settingWords(noisy, { key: 'startNoiseMultiple', kind: 'multiple' }, SI)).toBe('7.5\u00a0× SD')
    expect(settingWords(settings, { key: 'pressSpeedMmPerS', kind: 'speed' }, SI)).toBe('unknown')
  })
})
