import { describe, expect, it } from 'vitest'
import { detectionChange, detectionSettings } from '#contract/breaks/detection.ts'
import { changedWords, settingWords, thresholdGroups } from '#words/breaks/thresholdWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const SI = quantitiesIn('SI')

describe('thresholds in words', () => {
  it('names every threshold that may change', () => {
    const keys = thresholdGroups.flatMap(({ thresholds }) => thresholds.map(({ key }) => key))
    const known = Object.keys(detectionChange.shape).flatMap((key) =>
      key === 'endCodes' ? ['lowestCode', 'highestCode'] : [key],
    )
    expect(keys.toSorted()).toEqual(known.toSorted())
  })

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
