import { describe, expect, it } from 'vitest'
import { defaultPractices, testPractice } from '#contract/settings/practice.ts'
import { practiceTexts, practiceUnits, readPractice } from '#renderer/pages/settings/practiceForm.ts'
import { readableTexts } from '#renderer/parts/forms/typedTexts.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const SI = quantitiesIn('SI')

describe('readPractice', () => {
  it.each(['SI', 'US'] as const)('gives every practice back as it was, in %s units', (system) => {
    const units = quantitiesIn(system)
    for (const one of defaultPractices) {
      const texts = readableTexts({ texts: practiceTexts(one), typedIn: {} }, practiceUnits, units)
      expect(testPractice.parse(readPractice(texts, units, []).practice)).toEqual(one)
    }
  })
  it('leaves empty limits open', () => {
    const { practice } = readPractice({ ...practiceTexts(null), name: 'ours', source: 'none' }, SI, [])
    expect(practice?.rateNPerS).toEqual({ least: null, most: null })
    expect(practice?.samplingBoundPercent).toBeNull()
  })
  it('says for each field what is wrong with it', () => {
    const texts = {
      ...practiceTexts(null),
      ...{ name: 'EN 205', 'rateNPerS.least': 'fast', 'rateNPerS.most': '-1', samplingBoundPercent: '0' },
      ...{ 'timeToFailureS.least': '60', 'timeToFailureS.most': '5' },
    }
    const { practice, errors } = readPractice(texts, SI, ['EN 205'])
    expect(practice).toBeNull()
    expect(Object.keys(errors!).sort()).toEqual([
      ...['name', 'rateNPerS.least', 'rateNPerS.most', 'samplingBoundPercent', 'source', 'timeToFailureS.most'],
    ])
  })
})
